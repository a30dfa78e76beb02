import type { Format } from '../format.ts';
import { gangSum } from '../gang-sum.ts';
import type { GangWords } from './english-gang.ts';
import { frenchCounted } from './french-counted.ts';

const whole = (value: number, format: Format) => format.number(value, 0);
const tours = (count: number, format: Format) => frenchCounted(count, 'tour de presse', 'tours de presse', format);
const formes = (count: number) => frenchCounted(count, 'forme');
const fields = { board: 'carton', sheetGrain: 'sens des fibres de la feuille', coating: 'vernis', foodClass: 'classe alimentaire', delivery: 'livraison' } as const;

/** Un tour de presse imprime une feuille d’une forme. */
export const frenchGang: GangWords = {
  title: ({ ids, stations }) => (stations === undefined ? `Amalgame de ${frenchCounted(ids.length, 'modèle')}` : `Amalgame de ${frenchCounted(ids.length, 'version')}, ${stations} poses`),
  answer: ({ forms, pressings, cost, costs, currency, lowerBound, optimal, formsAllowed }, format) => {
    const got = `${tours(pressings, format)} sur ${formes(forms.length)}${cost === undefined ? '' : `, coût ${gangSum(cost, currency, format)}${currency === undefined ? ' comme les compte le dossier' : ''}`}`;
    const bound = optimal ? `avec ${formes(formsAllowed)} au plus, rien ${costs ? 'ne coûte' : 'n’en demande'} moins` : `au moins ${costs ? gangSum(lowerBound, currency, format, Math.floor) : whole(lowerBound, format)}, c’est prouvé ; s’il y a moins reste ouvert`;
    return `${got} ; ${bound}.`;
  },
  headings: { overs: 'Commandé, fabriqué, surplus', separate: 'Face à des tirages séparés', apart: 'Pourquoi tout ne va pas ensemble', assumed: 'Ce qui a été supposé', caution: 'Avant d’amalgamer' },
  form: (number, { pressings }, format) => `Forme ${number} : ${tours(pressings, format)}`,
  changes: (changes) => (changes === 0 ? 'Les plaques restent.' : `${frenchCounted(changes, 'emplacement')} des plaques ${changes === 1 ? 'change' : 'changent'} depuis la forme précédente.`),
  labels: { pressings: 'tours de presse', sheet: 'feuille' },
  stations: (numbers) => `emplacements ${numbers}`,
  apart: ({ designs: [a, b], because, says: [first, second] }) =>
    because === 'inks' ? `${a} et ${b} : leurs formes demanderaient ${first} encres, la presse a ${second} groupes.` : `${a} et ${b} : ${fields[because]} ${first ?? 'non donné'} et ${second ?? 'non donné'}.`,
  cuts: ({ strokes, turns }) => `Au massicot : ${frenchCounted(strokes, 'coupe')} et ${frenchCounted(turns, 'pile tournée', 'piles tournées')} par charge.`,
  ups: (count) => frenchCounted(count, 'pose'),
  made: (ordered, made, over, format) => `${whole(ordered, format)} commandés, ${whole(made, format)} fabriqués, ${whole(over, format)} en surplus`,
  allowed: ({ least, greatest }, format) => (greatest === Infinity ? `permis : à partir de ${whole(least, format)} en surplus` : `permis : de ${whole(least, format)} à ${whole(greatest, format)} en surplus`),
  separate: ({ separate, forms, pressings, cost, currency }, format) => {
    if (!separate) return [];
    const apart = `Chaque modèle à part : ${tours(separate.pressings, format)} sur ${formes(separate.forms)}${separate.cost === undefined ? '' : `, coût ${gangSum(separate.cost, currency, format)}`}`;
    const less = (saved: number, what: string) => (saved === 0 ? [] : [`${what} de ${saved > 0 ? 'moins' : 'plus'}`]);
    const by = [...less(separate.pressings - pressings, tours(Math.abs(separate.pressings - pressings), format)), ...less(separate.forms - forms.length, formes(Math.abs(separate.forms - forms.length)))];
    const money = cost === undefined || separate.cost === undefined ? '' : `, pour un coût ${cost <= separate.cost ? 'inférieur' : 'supérieur'} de ${gangSum(Math.abs(separate.cost - cost), currency, format)}`;
    return [`${apart}. L’amalgame demande ${by.length > 0 ? by.join(' et ') : 'autant'}${money}.`];
  },
  caution: 'Seuls des travaux de mêmes carton, sens des fibres, vernis, couleurs, classe alimentaire et livraison peuvent partager une forme. Les feuilles de calage et les plaques de chaque forme de plus s’ajoutent aux tours de presse.',
};
