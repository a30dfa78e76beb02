import { createCatalogue } from './catalogue.ts';
import { english } from './english.ts';
import { frenchCutting } from './french-cutting.ts';
import { frenchDay } from './french-day.ts';
import { frenchFood } from './french-food.ts';
import { frenchGang } from './french-gang.ts';
import { frenchHandover } from './french-handover.ts';
import { frenchPicture } from './french-picture.ts';
import { frenchReport } from './french-report.ts';
import type { Language } from './language.ts';

/** Issues that stand in reports; those of the command line are English. */
const issues = createCatalogue([{
  'margin-raised-for-bleed': '{edge} : marge portée de {from} à {to} mm. L’encre reste à {ink} mm du bord et le fond perdu demande {bleed} mm de plus.',
  'margin-raised-for-bar': '{edge} : marge portée de {from} à {to} mm. Bord sans encre {ink} mm, barre de contrôle {bar} mm, et distance aux filets coupants.',
  'machine-binds': '{what} : c’est {machine} qui limite (presse {press} mm, platine {cutter} mm).',
  'common-knife-pair': 'un seul filet peut couper le bord {side} d’une pose et le bord {other} de sa voisine, comme au tracé : {reason}.',
  'field-left-aside': '{where} : le champ « {field} » n’est pas connu et a été laissé de côté. Vérifiez son orthographe.',
  'caliper-open': '{where} : l’épaisseur de certaines formes n’est pas connue ({forms}), si bien qu’aucun changement d’épaisseur n’est compté avec elles. Donnez "caliper", ou un carton qui la nomme.',
  'layout-refused-by-judge': 'Une implantation trouvée a été refusée au contrôle ({kind}, {by} mm) ; elle est laissée de côté.',
}], { otherwise: english, terms: { gripper: 'pinces', tail: 'queue de feuille', left: 'gauche', right: 'droite', upper: 'haut', lower: 'bas', unprinted: 'non imprimé', 'same colour': 'même couleur', 'by word': 'sur parole', press: 'la presse', 'die-cutter': 'la platine de découpe' }, decimalSign: ',' });

export const frenchLanguage: Language = { locale: 'fr', issues, report: frenchReport, picture: frenchPicture, cutting: frenchCutting, handover: frenchHandover, gang: frenchGang, day: frenchDay, food: frenchFood };
