import type { Sequence } from '../../estimate/die-rows.ts';
import { isTumbled } from '../../layout/back-up.ts';
import type { Format } from '../format.ts';
import type { HandoverWords } from './english-handover.ts';
import { frenchPicture } from './french-picture.ts';
import { frenchReport } from './french-report.ts';
import { frenchStripping } from './french-stripping.ts';

/** Deviations listed before the rest is only counted. */
const LISTED = 8;

function sequence(lifts: Sequence, format: Format): string {
  if (lifts.kind === 'same') return format.length(lifts.value);
  if (lifts.kind === 'turns') return `${format.bareLength(lifts.values[0])} et ${format.length(lifts.values[1])} en alternance`;
  return `${lifts.values.map(format.bareLength).join(' ; ')} mm`;
}

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
    gap: 'filet à filet, au moins', bleed: 'fond perdu', nicks: 'points d’attache', stepX: 'pas courant dans une rangée (X)', stepY: 'pas courant dans une colonne (Y)', otherX: 'autres pas X', otherY: 'autres pas Y',
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
  rows: ({ along, rows, lifts, stagger, step }, format) => {
    const [row, many] = along === 'x' ? ['rangée', 'rangées'] : ['colonne', 'colonnes'];
    if (rows.length > 1 && rows.every(({ count }) => count === 1)) return 'Pas deux poses alignées ; placements.csv donne chaque place.';
    const counts = rows.map(({ count }) => count);
    const alike = counts.every((count) => count === counts[0]);
    const head = rows.length === 1 ? `Une ${row} de ${counts[0]}` : alike ? `${rows.length} ${many} de ${counts[0]}` : `${rows.length} ${many}, de ${counts.join(', ')}`;
    const stepped = Math.max(...counts) === 1 ? '' : step === undefined ? `, pas inégaux dans les ${many}` : `, pas de ${format.length(step)}`;
    if (!lifts) return `${head}${stepped}.`;
    const by = (mm: number) => `${format.length(Math.abs(mm))} ${along === 'x' ? (mm > 0 ? 'vers la droite' : 'vers la gauche') : mm > 0 ? 'vers la queue' : 'vers les pinces'}`;
    const shifts = { none: () => 'sans décalage', second: (mm: number) => `une ${row} sur deux décalée de ${by(mm)}`, each: (mm: number) => `chaque ${row} décalée de ${by(mm)} sur la précédente` };
    const shift = stagger.kind === 'listed' ? `${many} décalées sur la première : ${stagger.mm.slice(1).map((mm) => (mm === 0 ? 'pas du tout' : by(mm))).join(' ; ')}` : stagger.kind === 'none' ? shifts.none() : shifts[stagger.kind](stagger.mm);
    return `${head}${stepped} ; ${sequence(lifts, format)} d’une ${row} à l’autre ; ${shift}.`;
  },
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
