import { upsOf } from '../reel-facts.ts';
import type { ReelWords } from './english-reel.ts';
import { frenchCounted } from './french-counted.ts';

/** La coupe est ce qu’on tranche d’un coup de la bobine. */
export const frenchReel: ReelWords = {
  title: (facts, format) => `${facts.name} : ${frenchCounted(upsOf(facts), 'flan')} sur une bobine de ${format.length(facts.reelWidth)} de laize`,
  answer: (facts, format) => {
    const { cutOff, leastCutOff, reelWidth } = facts;
    const known = cutOff > leastCutOff ? `aucune coupe sous ${format.length(leastCutOff)} n’est possible` : 'on ne peut faire plus court';
    return `${frenchCounted(upsOf(facts), 'flan')} sur une bobine de ${format.length(reelWidth)} : longueur de coupe ${format.length(cutOff)} ; ${known} ; ${format.percent(facts.yield)} en flans.`;
  },
  headings: { length: 'La longueur', blanks: 'Ce qui s’y trouve', assumed: 'Ce qui a été supposé', caution: 'Avant de commander une forme' },
  labels: {
    cutOff: 'longueur de coupe', least: 'pas plus court que', difference: 'écart à cela', yield: 'rendement', reelPerThousand: 'bobine pour 1000 coupes', areaPerThousand: 'surface de 1000 coupes', stopped: 'arrêt de la recherche', time: 'durée',
    reelWidth: 'laize', ups: 'flans', gap: 'écart',
  },
  columns: ['modèle', 'poses', 'flan', 'orientations'],
  alongMachine: 'dans le sens machine',
  leastMeans: 'd’après la surface des flans avec leur part de l’écart, et d’après ceux qui ne peuvent être côte à côte',
  closed: 'aucun : on ne peut faire plus court',
  open: (mm, share, format) => `${format.length(mm)} (${format.percent(share)}) restent ouverts`,
  perThousand: (cutOff, format) => `${format.length(cutOff)} × 1000`,
  perThousandMeans: (ups, format) => `${frenchCounted(1000 * ups, 'flan', 'flans', format)}, sans calage ni gâche de roulage`,
  assumed: ({ gap, bleed, seed }, format) => [
    `L’écart de ${format.length(gap)} est gardé entre les flans d’une coupe ; ils peuvent toucher les bords de la bobine et la coupe. Si la coupe ou une molette demande de la place, donnez une laize plus étroite et ajoutez-la à la longueur de coupe.`,
    ...(bleed > 0 ? [`Le fond perdu de ${format.length(bleed)} reste sur la bobine et dans la coupe ; les filets gardent autant des bords.`] : []),
    `Le même travail, le même effort et la même graine (${seed}) donnent la même implantation.`,
  ],
  caution: 'Ceci est un plan. Filets, écarts et marges sont confirmés avec le manuel de la machine et le fabricant de formes avant toute commande. Presses, bobineuses-refendeuses et platines de découpe sont conduites par des personnes formées, selon les règles locales.',
};
