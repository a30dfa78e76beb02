import type { Format } from '../format.ts';
import { boardText, englishBatch, type BatchWords } from './english-batch.ts';
import { frenchCounted } from './french-counted.ts';

const etuis = (count: number, format: Format) => frenchCounted(count, 'étui', 'étuis', format);

export const frenchBatch: BatchWords = {
  size: englishBatch.size,
  title: ({ name, cartons, sheets }, format) => `${name} : ${etuis(cartons.length, format)} sur ${frenchCounted(sheets.length, 'format de feuille', 'formats de feuille', format)}`,
  answer: (facts, format) => {
    const gaining = facts.cartons.filter(({ saving }) => saving !== undefined && saving.boardM2 > 0);
    const known = facts.cartons.filter(({ saving }) => saving !== undefined);
    const unfinished = facts.complete ? '' : ' Pour l’instant ; la série a été arrêtée avant la fin.';
    if (facts.cartons.length === 0) return `Sur ${etuis(facts.refused.length, format)}, pas un n’a pu être implanté.${unfinished}`;
    if (known.length === 0) return `${etuis(facts.cartons.length, format)} implantés ; ce qu’une année épargne n’est pas connu, car aucun n’a à la fois un volume annuel et une feuille habituelle qui le porte.${unfinished}`;
    if (gaining.length === 0) return `Sur ${etuis(known.length, format)}, pas un ne prend moins de carton sur une autre feuille que sur l’habituelle.${unfinished}`;
    return `${format.number(gaining.length, 0)} sur ${etuis(known.length, format)} ${gaining.length === 1 ? 'prend' : 'prennent'} moins de carton sur une autre feuille que sur l’habituelle : ${boardText(facts.total, facts.currency, format)} par an.${unfinished}`;
  },
  headings: { cartons: 'Ce que chacun épargne par an', sheets: 'Feuille par feuille', changed: 'Un moteur antérieur répondait autrement', setAside: 'Mis de côté : échec répété', refused: 'Étuis inutilisables', caution: 'Avant de commander du carton' },
  doubtful: (number, format) => `Tracés douteux : ${format.number(number, 0)}`,
  cartonHead: (currency, money, { boardUnit: { name: area } }) => ['étui', 'feuille habituelle', 'meilleure feuille', 'étuis par an', 'poses actuelles', 'poses', 'au plus', `${area}/1000 actuels`, `${area}/1000`, `${area} par an`, ...(money ? [`${currency} par an`] : [])],
  sheetHead: (currency, money, { boardUnit: { name: area } }) => ['feuille', 'la meilleure pour', `${area} par an`, 'kg par an', ...(money ? [`${currency} par an`] : [])],
  none: 'aucune',
  pictured: ({ id, name, saving }, currency, format) => `${name ?? id}${saving === undefined ? '' : ` : ${boardText(saving, currency, format)} par an`}`,
  more: (number, format) => `… et ${format.number(number, 0)} autres dans le JSON et la page.`,
  sheetsNote: 'Par an, si la feuille était achetée à côté des habituelles et servait aux étuis qui y gagnent. Les feuilles ne s’additionnent pas : un étui compte une fois pour chaque feuille où il gagne.',
  changed: (carton, sheet, before, ups, engine) => `${carton} sur ${sheet} : ${before} poses auparavant (moteur ${engine}), ${ups} maintenant ; les deux sont gardées.`,
  setAside: (carton, sheet, message) => `${carton} sur ${sheet} : ${message}`,
  refused: (id, reasons) => `${id} : ${reasons}`,
  caution: 'Les chiffres sont le carton net des implantations trouvées : gâche de calage et de roulage s’ajoutent des deux côtés, et une nouvelle feuille peut demander une nouvelle forme. Filets, écarts et prise de pinces sont confirmés avec le manuel de la machine et le fabricant de formes avant toute commande.',
};
