import type { MessageTable } from './catalogue.ts';
import { FRENCH_STAGES } from './french-stages.ts';

/** Issues that stand in reports; those of the command line are English. */
export const frenchIssues: MessageTable = {
  'margin-raised-for-bleed': '{edge} : marge portée de {from} à {to} mm. L’encre reste à {ink} mm du bord et le fond perdu demande {bleed} mm de plus.',
  'margin-raised-for-bar': '{edge} : marge portée de {from} à {to} mm. Bord sans encre {ink} mm, barre de contrôle {bar} mm, et distance aux filets coupants.',
  'machine-binds': '{what} : c’est {machine} qui limite (presse {press} mm, platine {cutter} mm).',
  'layout-refused-by-judge': 'Une implantation trouvée a été refusée au contrôle ({kind}, {by} mm) ; elle est laissée de côté.',
  'fewer-layouts': '{count} implantations vraiment différentes étaient demandées, {found} trouvées. Plus d’effort peut en trouver d’autres.',
  'common-knife-pair': 'un seul filet peut couper le bord {side} d’une pose et le bord {other} de sa voisine, comme au tracé : {reason}.',

  'field-left-aside': '{where} : le champ « {field} » n’est pas connu et a été laissé de côté. Vérifiez son orthographe.',
  'caliper-open': '{where} : l’épaisseur de certaines formes n’est pas connue ({forms}), si bien qu’aucun changement d’épaisseur n’est compté avec elles. Donnez "caliper", ou un carton qui la nomme.',
  'quantity-twice': '{where} : le tirage {quantity} est donné deux fois et compté une fois.',
  'no-stages-given': '{where} : aucune étape n’est nommée après l’impression, aucune n’est donc comptée. Nommez-les dans "stages", par exemple "die-cutting" et "gluing".',
  'sheet-outside-die': '{where} : la feuille de {width} × {height} mm sort de ce qui est indiqué pour la forme. Demandez si elle y passe.',
  'layout-of-quote-faulty': 'L’implantation a {faults} défauts : contrôlez-la avant de la chiffrer.',
  'compare-quantities-assumed': 'Les tirages n’étaient pas donnés : {quantities} sont retenus.',
  'stripping-rule-prefer': 'Entre implantations au même nombre de poses, celle qui se décortique le mieux {mode} est retenue, avec des bandes de déchet de {strip} mm ou plus.',
  'stripping-rule-must': 'Seules sont retenues les implantations qui respectent ce que demande le décorticage {mode}, avec des bandes de déchet de {strip} mm ou plus.',
  'stripping-falls-short': 'Cette implantation ne respecte pas tout ce que demande le décorticage {mode} : la page de décorticage du dossier montre où.',
  'compare-route-assumed': '{what} : non indiqué ; {value} est retenu.',
};

/** Words that facts carry. */
export const frenchTerms: Readonly<Record<string, string>> = {
  ...Object.fromEntries(Object.entries(FRENCH_STAGES).map(([stage, [, name]]) => [stage, name])),
  'gripper margin': 'prise de pinces', 'tail margin': 'marge de queue', 'left side margin': 'marge gauche', 'right side margin': 'marge droite', gap: 'écart',
  'by hand': 'à la main', 'with tools': 'avec outils', 'with blanking': 'avec séparation des poses',
  press: 'la presse', 'die-cutter': 'la platine de découpe', 'press and die-cutter alike': 'les deux de même',
  front: 'recto', back: 'verso', gripper: 'pinces', tail: 'queue de feuille', left: 'gauche', right: 'droite', 'left side': 'côté gauche', 'right side': 'côté droit',
  upper: 'haut', lower: 'bas', unprinted: 'non imprimé', 'same colour': 'même couleur', 'by word': 'sur parole', colours: 'Couleurs', stages: 'Étapes suivantes',
  solid: 'continu', dashed: 'tireté', dotted: 'pointillé', 'dash-dot': 'mixte',
  overlap: 'chevauchement', outside: 'hors de la surface', 'keep-out': 'zone réservée', bleed: 'fond perdu', rotation: 'orientation', outline: 'contour',
};
