import type { BrokenCondition } from '../../estimate/stripping-conditions.ts';
import { LEAST_FRAME_MM, LEAST_GRID_MM, type StrippingMode, type StrippingWish } from '../../press/stripping.ts';
import type { Format } from '../format.ts';
import { PRICED_BLANKS, priceOfUps, type StrippingChoiceWords } from './english-stripping-choice.ts';

const phrases = (broken: readonly BrokenCondition[], { leastStrip }: Omit<StrippingWish, 'rule'>, format: Format) => broken.map(({ condition, count }) => ({
  strips: `${count} ${count === 1 ? 'filament fait' : 'filaments font'} moins de ${format.length(leastStrip)}`,
  islands: `${count} ${count === 1 ? 'îlot est enfermé' : 'îlots sont enfermés'} entre des poses`,
  pins: `${count} ${count === 1 ? 'îlot n’a' : 'îlots n’ont'} pas la place d’une aiguille de ${format.length(leastStrip)}`,
  frame: `moins de ${LEAST_FRAME_MM} mm de cadre à ${count} des bords, queue et côtés`,
  ways: `aucun réseau de passages droits de ${LEAST_GRID_MM} mm ne sépare toutes les poses`,
})[condition]).join(', ');

const MODES: Readonly<Record<StrippingMode, string>> = { 'by-hand': 'à la main', 'with-tools': 'avec outils', 'with-blanking': 'avec séparation des poses' };

const sheetsText = (more: number, fewer: number, format: Format) => {
  const { least, most, share } = priceOfUps(more, fewer);
  return `${format.percent(share)} de feuilles en plus (${format.number(most, 0)} au lieu de ${format.number(least, 0)} pour ${format.number(PRICED_BLANKS, 0)} flans)`;
};

export const frenchStrippingChoice: StrippingChoiceWords = {
  heading: 'Décorticage',
  modes: MODES,
  asks: ({ mode, leastStrip }, format) => {
    const strips = `au moins ${format.length(leastStrip)} de déchet entre deux poses`;
    const frame = `au moins ${LEAST_FRAME_MM} mm de cadre en queue et sur les côtés, la place d’une aiguille dans chaque îlot entre poses`;
    const asked = { 'by-hand': `${strips}, aucun îlot enfermé entre des poses`, 'with-tools': `${strips}, ${frame}`, 'with-blanking': `${strips}, ${frame}, chaque pose seule entre des passages droits d’au moins ${LEAST_GRID_MM} mm` }[mode];
    return `Le décorticage ${MODES[mode]} demande ${asked} (largeurs : pratique courante, sans source).`;
  },
  verdict: (broken, wish, format) => (broken.length === 0 ? 'Cette implantation le respecte : vérifié à part de la recherche, sur les vraies courbes.' : `Cette implantation ne le respecte pas : ${phrases(broken, wish, format)}.`),
  lead: ({ wish, broken, other }, ups, format) => {
    if (wish.rule === 'must' && other) return `${other.ups} poses sont possibles, mais ${phrases(other.broken, wish, format)} : ${ups} respectent la règle du décorticage ${MODES[wish.mode]}.`;
    return broken.length === 0 ? `Elle se décortique proprement ${MODES[wish.mode]}.` : `Elle ne se décortique pas proprement ${MODES[wish.mode]} : ${phrases(broken, wish, format)}.`;
  },
  price: ({ wish, broken, other, limit }, ups, format) => [
    ...(other && wish.rule === 'must' ? [`Le prix d’un décorticage propre : ${ups} poses demandent ${sheetsText(other.ups, ups, format)} que ${other.ups}.`] : []),
    ...(other && wish.rule === 'prefer' ? [`${other.ups} poses la respecteraient (--stripping-rule must), pour ${sheetsText(ups, other.ups, format)}.`] : []),
    ...(broken.length > 0 && !other ? ['Aucune implantation qui la respecte n’a été trouvée.'] : []),
    ...(limit === undefined ? [] : [limit === (broken.length === 0 ? ups : other?.ups) ? `Aucune implantation qui la respecte n’en porte plus de ${limit} : prouvé.` : `Au plus ${limit} peuvent la respecter ; s’il y en a plus que trouvé n’est pas tranché.`]),
  ],
  limitStays: 'La limite ci-dessus est celle de la feuille sans cette règle ; elle vaut aussi avec elle.',
  limitMet: 'la limite sous la règle de décorticage est atteinte : aucune implantation qui la respecte n’en porte davantage',
  other: (ups, kept) => `${ups} poses, ${kept ? 'décorticage propre' : 'décorticage imparfait'}`,
  remedy: ({ mode, leastStrip }) => `nest --stripping ${mode} --stripping-rule must --least-strip ${leastStrip} cherche la meilleure implantation qui la respecte.`,
};
