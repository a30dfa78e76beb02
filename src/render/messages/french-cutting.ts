import type { CuttingWords } from './english-cutting.ts';
import { frenchCounted } from './french-counted.ts';

/** Une charge est ce qui passe d’un coup sous la lame. */
export const frenchCutting: CuttingWords = {
  answer: (ups, size, { exact, dieCut }, used) => {
    const known = exact ? 'aucun schéma de coupes droites n’en donne davantage' : 'on n’a pas prouvé qu’un autre schéma de coupes droites n’en donne pas davantage';
    const compared = dieCut.ups > ups ? `à la forme de découpe, il en tient ${dieCut.ups}` : 'la forme de découpe n’en donne pas davantage';
    return `${ups} poses sur ${size} au massicot ; ${known} ; ${compared} ; ${used}.`;
  },
  headings: { list: 'Liste des coupes', time: 'Temps de coupe', picture: 'Les coupes' },
  pattern: { label: 'coupes droites', exact: 'le meilleur, c’est prouvé', open: 'le meilleur trouvé', meaning: 'toute division de la feuille par des coupes de bord à bord qui peut compter a été pesée' },
  dieCut: { label: 'à la forme', value: ({ ups, limit }) => (ups === limit ? `${ups} poses, le plus possible` : `${ups} poses trouvées, au plus ${limit}`) },
  step: (number) => `coupe ${number}`,
  places: ({ places }, format) => `${places.map((mm) => format.bareLength(mm)).join(' ; ')} ${format.unit}`,
  pile: ({ axis, piles, turned, width, height }, format) =>
    `${turned ? 'un quart de tour, ' : ''}${piles === 1 ? 'pile' : `${piles} piles pareilles, chacune`} ${format.size(width, height)}, depuis le côté ${axis === 'x' ? 'taquet' : 'pinces'}`,
  labels: { machine: 'massicot', strokes: 'coupes par charge', turns: 'piles tournées par charge', lift: 'une charge', minutes: 'minutes par charge', perThousand: 'minutes pour 1000 feuilles', perLabels: 'minutes pour 1000 étiquettes', setUp: 'calage' },
  lift: ({ liftHeight, caliper, time }, format) =>
    time.sheetsPerLift === undefined ? `${format.length(liftHeight)} ; nombre de feuilles ouvert, l’épaisseur n’est pas donnée (--board)` : `${format.number(time.sheetsPerLift, 0)} feuilles, ${format.length(liftHeight)} à ${format.number(caliper!, 3)} mm`,
  minutes: (value, format, decimals = 1) => `${format.number(value, decimals)} min`,
  alikeNote: 'Les piles pareilles passent côte à côte sous la lame, autant que sa largeur le permet.',
  picture: (strokes, ups) => `${frenchCounted(strokes, 'coupe')} pour ${ups} étiquettes ; les numéros sont ceux de la liste des coupes`,
  caution:
    'Ceci est un plan. Les massicots sont dangereux : seules des personnes formées y travaillent, protecteurs et commande à deux mains en ordre, selon le manuel de la machine et les règles locales. Les cotes de coupe sont vérifiées sur une première feuille avant de couper une charge. Pour les emballages alimentaires, la personne responsable choisit encres, vernis et carton selon la loi.',
};
