import { isOfOutlines, runTotals } from '../run-facts.ts';
import type { RunWords } from './english-run.ts';
import { frenchCounted } from './french-counted.ts';

export const frenchRun: RunWords = {
  title: ({ ids, stations, numbers }) => (stations === undefined ? `Le tirage en argent : ${frenchCounted(ids.length, 'modèle')} sur ${frenchCounted(numbers.length, 'forme')}` : `Le tirage en argent : ${frenchCounted(ids.length, 'version')}, ${stations} poses`),
  answer: (facts, quote, format) => {
    const { currency, cost: { costPerThousand, pricePerThousand }, ids } = facts;
    const { quantity, sheets, cost, price, boardPerThousand } = runTotals(facts);
    const money = (whole: number, perThousand: number) => `${format.money(whole, currency)} (${format.money(perThousand, currency)} le mille)`;
    const known = cost === undefined ? (boardPerThousand === undefined ? 'coût ouvert' : `carton ${format.money(boardPerThousand, currency)} le mille, coût ouvert`) : `coût ${money(cost, costPerThousand.value!)}`;
    const lead = price === undefined ? known : `prix ${money(price, pricePerThousand!.value!)}, ${known}`;
    return `Le tirage entier : ${lead} ; ${frenchCounted(sheets, 'feuille', 'feuilles', format)} sur ${frenchCounted(facts.numbers.length, 'forme')} pour ${quote.quantity(quantity, format)} ${isOfOutlines(facts) ? `de ${frenchCounted(ids.length, 'modèle')}` : `en ${frenchCounted(ids.length, 'version')}`}.`;
  },
  headings: { versions: 'Ce que coûte chaque version', designs: 'Ce que coûte chaque modèle', forms: 'Les formes et leurs feuilles', shared: 'Comment c’est partagé', whole: 'Pour le tirage entier' },
  head: {
    version: 'version', design: 'modèle', ordered: 'commandé', made: 'sorti des formes', cost: 'coût', costPerThousand: 'coût le mille', pricePerThousand: 'prix le mille', all: 'toutes',
    form: 'forme', planned: 'tours de presse', good: 'bonnes feuilles', sheets: 'feuilles à commander', plates: 'plaques', board: 'carton, kg', hours: 'presse, h',
  },
  open: 'ouvert',
  form: (number) => `Forme ${number}`,
  goodSheets: (good, planned, format) => (good > planned ? `${frenchCounted(planned, 'tour de presse', 'tours de presse', format)} selon le plan ; il faut ${frenchCounted(good, 'bonne feuille', 'bonnes feuilles', format)}.` : `Il faut ${frenchCounted(good, 'bonne feuille', 'bonnes feuilles', format)}, comme prévu.`),
  shared: (facts, format) => {
    const { planned, pressings } = runTotals(facts);
    const more = pressings > planned ? [`Les ${frenchCounted(planned, 'tour de presse', 'tours de presse', format)} du plan font les quantités ; ${frenchCounted(pressings, 'bonne feuille', 'bonnes feuilles', format)} les laissent entières après collage et emballage aussi.`] : [];
    if (isOfOutlines(facts)) return [
      'Par surface : carton, plaques, forme de découpe, encre et temps machine d’une forme sont portés par les flans qui y sont, chacun en proportion de sa surface (ouvertures non déduites). La gâche de la feuille est payée par tous.',
      'Chaque forme est calée à part, de la presse au décorticage, et demande son propre outil de découpe s’il n’existe pas déjà. Collage et emballage sont réglés pour chaque modèle ; chacun porte ce qu’il y demande.',
      'Le matériel d’emballage est partagé selon les exemplaires commandés, le transport selon leur surface ; si l’on a dit comment tout est emballé, chaque modèle porte ses caisses, ses palettes et son transport.',
      ...more,
    ];
    return [
      'Par emplacements : carton, plaques, encre et temps machine d’une forme sont portés à parts égales par les emplacements qui y impriment, tous de même surface. Un emplacement vide est payé par les autres.',
      'La forme de découpe est partagée selon les exemplaires fabriqués, collage et emballage selon les exemplaires passés, matériel d’emballage et transport selon les exemplaires commandés.',
      'La presse est calée pour chaque forme. La suite n’est réglée qu’une fois, l’outil et le découpage étant les mêmes : après la presse avec la forme la plus longue, collage et emballage avec la plus grande version.',
      ...more,
    ];
  },
};
