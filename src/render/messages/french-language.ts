import { createCatalogue } from './catalogue.ts';
import { english } from './english.ts';
import { englishCutting } from './english-cutting.ts';
import { frenchHandover } from './french-handover.ts';
import { frenchPicture } from './french-picture.ts';
import { frenchReport } from './french-report.ts';
import type { Language } from './language.ts';

/** Issues that stand in reports; those of the command line are English. */
const issues = createCatalogue([{
  'margin-raised-for-bleed': '{edge} : marge portée de {from} à {to} mm. L’encre reste à {ink} mm du bord et le fond perdu demande {bleed} mm de plus.',
  'margin-raised-for-bar': '{edge} : marge portée de {from} à {to} mm. Bord sans encre {ink} mm, barre de contrôle {bar} mm, et distance aux filets coupants.',
  'machine-binds': '{what} : c’est {machine} qui limite (presse {press} mm, platine {cutter} mm).',
  'layout-refused-by-judge': 'Une implantation trouvée a été refusée au contrôle ({kind}, {by} mm) ; elle est laissée de côté.',
}], { otherwise: english, terms: { gripper: 'pinces', tail: 'queue de feuille', left: 'gauche', right: 'droite', press: 'la presse', 'die-cutter': 'la platine de découpe' } });

export const frenchLanguage: Language = { locale: 'fr', issues, report: frenchReport, picture: frenchPicture, cutting: englishCutting, handover: frenchHandover };
