import { createCatalogue } from './catalogue.ts';
import { english } from './english.ts';
import { englishCutting } from './english-cutting.ts';
import { germanHandover } from './german-handover.ts';
import { germanPicture } from './german-picture.ts';
import { germanReport } from './german-report.ts';
import type { Language } from './language.ts';

/** Issues that stand in reports; those of the command line are English. */
const issues = createCatalogue([{
  'margin-raised-for-bleed': '{edge}: Rand von {from} auf {to} mm vergrößert. Farbe bleibt {ink} mm vom Bogenrand weg, der Beschnitt braucht {bleed} mm mehr.',
  'margin-raised-for-bar': '{edge}: Rand von {from} auf {to} mm vergrößert. Druckfreier Rand {ink} mm, Kontrollstreifen {bar} mm, und Abstand zu den Messern.',
  'machine-binds': '{what}: maßgebend ist {machine} (Druckmaschine {press} mm, Stanze {cutter} mm).',
  'layout-refused-by-judge': 'Eine gefundene Anordnung hat der Prüfer verworfen ({kind}, {by} mm); sie ist weggelassen.',
}], { otherwise: english, terms: { gripper: 'Greifer', tail: 'Bogenende', left: 'links', right: 'rechts', press: 'die Druckmaschine', 'die-cutter': 'die Stanze' } });

export const germanLanguage: Language = { locale: 'de', issues, report: germanReport, picture: germanPicture, cutting: englishCutting, handover: germanHandover };
