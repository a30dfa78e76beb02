import { isTumbled } from '../../layout/back-up.ts';
import type { Format } from '../format.ts';
import type { HandoverWords } from './english-handover.ts';
import { frenchPicture } from './french-picture.ts';
import { frenchReport } from './french-report.ts';
import { frenchStripping } from './french-stripping.ts';

/** Deviations listed before the rest is only counted. */
const LISTED = 8;

const SIDES: Readonly<Record<string, string>> = { left: 'gauche', right: 'droit', upper: 'supérieur', lower: 'inférieur' };

export const frenchHandover: HandoverWords = {
  gripperEdge: frenchPicture.gripperEdge,
  lay: frenchPicture.sideLay,
  lays: { left: 'gauche', right: 'droite' },
  figures: {
    'crease rule height': 'hauteur du filet raineur', 'channel width, fibres along the crease': 'largeur de gorge, fibres le long du rainage', 'channel width, fibres across the crease': 'largeur de gorge, fibres en travers du rainage', 'cutting force': 'effort de découpe',
  },
  keepOut: (kind) => frenchPicture.keepOuts[kind] ?? kind,
  role: (role) => frenchPicture.roles[role] ?? role,
  sides: {
    printed: { title: 'CÔTÉ IMPRIMÉ', meaning: 'vu comme la feuille est imprimée ; ce n’est pas le côté des filets' },
    rule: { title: 'CÔTÉ FILETS', meaning: 'image en miroir : les filets pointent vers vous' },
  },
  notice: ({ layoutNumber, revision, fingerprint, layout }, format) =>
    [`implantation ${layoutNumber ?? fingerprint.slice(0, 12)}`, ...(revision ? [`tracé ${revision}`] : []), `${layout.placements.length} poses sur ${format.size(layout.sheet.width, layout.sheet.height)}`].join('  ·  '),
  notGiven: '____________ (non donné)',
  labels: {
    layout: 'numéro d’implantation', fingerprint: 'empreinte du contenu', revision: 'version du tracé', approvedBy: 'approuvé par', date: 'date', sheet: 'feuille', lay: 'taquet latéral', centre: 'axe de la feuille', board: 'carton',
    gap: 'filet à filet, au moins', bleed: 'fond perdu', nicks: 'points d’attache', stepX: 'pas courant le long des pinces (X)', stepY: 'pas courant en s’éloignant (Y)', otherX: 'autres pas X', otherY: 'autres pas Y',
    creaseAlong: 'rainages le long des fibres', creaseAcross: 'rainages en travers des fibres', quantity: 'tirage', sheets: 'feuilles à imprimer', back: 'verso', food: 'fiche alimentaire', ups: 'poses', gripper: 'prise de pinces', grain: 'sens des fibres', station: 'pose', blank: 'flan',
  },
  headings: {
    who: 'Quelle implantation', sheet: 'La feuille', rules: 'Filets de la forme', stations: 'Filets par pose', steps: 'Pas', creases: 'Rainages et gorges', force: 'Effort de découpe', views: 'Les deux vues', job: 'Le travail', caution: 'Avant usage', checks: 'À vérifier sur la première feuille',
  },
  titles: { die: 'Commande de forme', crew: 'Fiche de conduite', customer: 'Pour le client' },
  dieAnswer: ({ layout, cuttingMm, ruleMm }, format) => `Forme de ${layout.placements.length} poses sur ${format.size(layout.sheet.width, layout.sheet.height)} : ${metres(ruleMm.reduce((sum, [, mm]) => sum + mm, 0), format)} de filet, dont ${metres(cuttingMm, format)} de coupant.`,
  crewAnswer: ({ layout, sheets }, format) => `${layout.placements.length} poses sur ${format.size(layout.sheet.width, layout.sheet.height)}${sheets === undefined ? '' : `, ${format.number(sheets, 0)} feuilles`} ; taquet latéral à ${layout.lay === 'left' ? 'gauche' : 'droite'}.`,
  customerAnswer: ({ layout, product, designs }, format) => `${product ?? designs.map(({ id }) => id).join(', ')} : ${layout.placements.length} à la fois sur une feuille de ${format.size(layout.sheet.width, layout.sheet.height)}.`,
  designLine: ({ ups, widthMm, heightMm }, format) => `${ups} poses, flan ${format.size(widthMm, heightMm)}`,
  centreLine: ({ layout }, format) => `${format.length(layout.sheet.width / 2)} de chaque bord latéral`,
  usualStep: ({ usual, count }, format) => (usual === undefined ? 'pas deux poses alignées' : `${format.length(usual)}, ${count} fois`),
  deviations: ({ usual, deviations }, format) => {
    if (usual === undefined || deviations.length === 0) return 'aucun';
    const named = deviations.slice(0, LISTED).map(({ stations: [a, b], mm }) => `${a + 1} à ${b + 1} : ${format.length(mm)} (${mm > usual ? '+' : ''}${format.bareLength(mm - usual)})`);
    return named.join(' ; ') + (deviations.length > LISTED ? ` ; et ${deviations.length - LISTED} autres, voir placements.csv` : '');
  },
  nicks: ({ count, widthMm, clearOf }) => `${count} par pose, larges de ${widthMm} mm${clearOf.length > 0 ? `, aucun sur le bord ${clearOf.map((side) => SIDES[side] ?? side).join(' ni ')} du tracé` : ''} ; calque Nicks`,
  back: {
    sheetwise: 'recto-verso en deux formes : mêmes pinces, le taquet change de côté, second jeu de plaques',
    'work-and-turn': 'à la retourne, en demi-feuille : mêmes pinces, le taquet change de côté, mêmes plaques',
    'work-and-tumble': 'à la culbute : la queue devient côté pinces, mêmes plaques',
    perfecting: 'retiration en ligne : la queue devient côté pinces dans la presse',
  },
  backSide: 'VERSO',
  backGripper: (style) => (isTumbled(style) ? 'côté pinces du verso (queue du recto)' : 'côté pinces (le même qu’au recto)'),
  views: 'die-printed-side.dxf montre la feuille comme elle est imprimée ; die-rule-side.dxf en est l’image en miroir, filets vers vous. Chacun porte son nom en toutes lettres près de la feuille. Les arcs de cercle sont des arcs ; les autres courbes sont des cordes à 0,005 mm près.',
  merged: 'Des filets qui se superposent n’en font qu’un ; un filet partagé par deux poses compte avec la première.',
  confirm: 'Valeurs de départ : coupant 23,8 mm, filet 0,71 mm (2 pt), 70 N par millimètre de coupant sans les mousses. Le fabricant de formes les confirme.',
  byHand: 'Nombre de poses, côté pinces, taquet et numéros sur la feuille en main ; repérage découpe-impression aux quatre coins ; rainages non éclatés ; poses tenues par leurs points d’attache.',
  stripping: frenchStripping,
  coating: { title: 'FORME DE VERNIS', coated: 'verni', free: 'réserves', heading: 'Forme de vernis', stationFree: (areas, area) => (areas === 0 ? 'aucune réserve' : `${areas} ${areas === 1 ? 'zone' : 'zones'}, ${area}`) },
  caution: frenchReport.caution,
  crewCaution:
    'Presses, massicots et platines de découpe sont dangereux : seules des personnes formées y travaillent, selon les règles locales, protecteurs fermés et énergie consignée pour toute intervention à l’intérieur. Prise de pinces et écarts suivent le manuel de la machine. Pour les emballages alimentaires, encres, vernis et carton sont ceux que la personne responsable a choisis.',
  customerCaution: 'Une image de l’implantation, pas une épreuve couleur. Pour les emballages alimentaires, la personne responsable choisit encres, vernis et carton selon la loi.',
};

function metres(mm: number, format: Format): string {
  return `${format.number(mm / 1000, 2, true)} m`;
}
