import type { Purchase } from '../../estimate/buying.ts';
import type { InkZones } from '../../estimate/ink-zones.ts';
import type { QuantityQuote } from '../../estimate/quote.ts';
import type { StageNeed } from '../../estimate/sheets-needed.ts';
import type { Format } from '../format.ts';
import type { Product, QuotedLayout, QuoteFacts } from '../quote-facts.ts';
import type { QuoteWords } from './english-quote.ts';
import { figureName } from './figure-names.ts';
import { frenchCounted } from './french-counted.ts';
import { frenchFigures } from './french-figures.ts';
import { FRENCH_STAGES } from './french-stages.ts';
import { purchaseLine, purchaseLineInInches, ratesBySource, winningRange, zoneSpread, type PurchaseWords } from './quote-figures.ts';

type Noun = readonly [one: string, many: string];
const counted = (count: number, [one, many]: Noun, format?: Format) => frenchCounted(count, one, many, format);
const whole = (value: number, format: Format) => format.number(value, 0);

const PRODUCTS: Readonly<Record<Product, Noun>> = { carton: ['étui', 'étuis'], label: ['étiquette', 'étiquettes'], blank: ['flan', 'flans'] };
const SHEETS: Noun = ['feuille', 'feuilles'];
const PALLETS: Noun = ['palette', 'palettes'];
const CASES: Noun = ['caisse', 'caisses'];
const UPS: Noun = ['pose', 'poses'];

/** Units that are things counted. */
const UNITS: Readonly<Record<string, Noun>> = { cases: CASES, layers: ['couche', 'couches'], pallets: PALLETS, sheets: SHEETS };

const purchaseWords = (format: Format): PurchaseWords => ({
  sheets: (count) => counted(count, SHEETS, format),
  packets: (count) => counted(count, ['paquet', 'paquets'], format),
  pallets: (count) => counted(count, PALLETS, format),
  pile: (height) => `piles jusqu’à ${height}`,
  workingDays: (count) => counted(count, ['jour ouvré', 'jours ouvrés'], format),
  inInches: (size) => `En pouces et livres : ${size}`,
  perThousandSquareFeet: (pounds) => `${pounds} par 1000 ft²`,
  perThousandSheets: (pounds) => `${pounds} les mille feuilles (arrondi à la rame)`,
});

/** `de 14 000 à 50 000`. */
export function frenchQuantities(winners: readonly { readonly fromQuantity: number }[], index: number, format: Format): string {
  const { from, to } = winningRange(winners, index);
  if (from === 0) return to === undefined ? 'tout tirage' : `jusqu’à ${whole(to, format)}`;
  return to === undefined ? `à partir de ${whole(from, format)}` : `de ${whole(from, format)} à ${whole(to, format)}`;
}

export function frenchQuote(product: Product): QuoteWords {
  const products = PRODUCTS[product];
  const made = (count: number, format?: Format) => counted(count, products, format);
  const named = (name: string) => figureName(name, frenchFigures, products[1]);
  const listed = (names: readonly string[]) => names.map(named).join(', ');
  const notGiven = (names: readonly string[]) => `sans indication de : ${listed(names)}`;
  return {
    title: ({ name, ups, sheet }: QuoteFacts, format: Format) => `Devis${name === undefined ? '' : ` ${name}`} : ${counted(ups, UPS)} sur ${format.size(sheet.width, sheet.height)}`,
    answer: ({ quantities, currency }: QuoteFacts, format: Format) => {
      const each = ({ quantity, needed, costPerThousand, boardCostPerThousand, pricePerThousand }: QuantityQuote) => {
        const cost = costPerThousand.value !== null ? `coût ${format.money(costPerThousand.value, currency)} le mille` : boardCostPerThousand.value !== null ? `carton ${format.money(boardCostPerThousand.value, currency)} le mille` : 'coût ouvert';
        const money = pricePerThousand?.value == null ? cost : `prix ${format.money(pricePerThousand.value, currency)} le mille, coût ${format.money(costPerThousand.value!, currency)}`;
        return `${made(quantity, format)} ${quantity < 2 ? 'demande' : 'demandent'} ${counted(needed.sheets, SHEETS, format)}, ${money}`;
      };
      return `${quantities.map(each).join(' ; ')}.`;
    },
    headings: {
      overview: 'En bref', missing: 'Tarifs manquants', inks: 'Zones d’encrage', food: 'Mention alimentaire : telle que donnée, non jugée', buying: 'À commander', die: 'La forme existante face à une neuve',
      layouts: `Quelle implantation, à partir de combien ${product === 'blank' ? 'de ' : 'd’'}${products[1]}`, assumed: 'Ce qui a été supposé', caution: 'Avant de promettre', prices: 'Prix', packing: 'Conditionnement', terms: 'Conditions',
    },
    quantity: made,
    overview: ({ needed, boardWeight, boardCostPerThousand, costPerThousand, pricePerThousand, pressHours }: QuantityQuote, currency: string, format: Format) =>
      [
        `${counted(needed.sheets, SHEETS, format)} (gâche +${format.percent(needed.sheets / needed.netSheets - 1)} sur ${whole(needed.netSheets, format)} net)`,
        `${format.number(boardWeight.value ?? 0, 2, true)} kg de carton`,
        boardCostPerThousand.value === null ? 'coût du carton ouvert' : `carton ${format.money(boardCostPerThousand.value, currency)} le mille`,
        pressHours && (pressHours.value === null ? 'heures de presse ouvertes' : `presse ${format.number(pressHours.value, 2)} h`),
        costPerThousand.value === null ? 'coût au mille ouvert' : `coût ${format.money(costPerThousand.value, currency)} le mille`,
        pricePerThousand?.value != null && `prix ${format.money(pricePerThousand.value, currency)} le mille`,
      ].filter(Boolean).join(', '),
    missing: (name: string) => `${named(name)} : non donné ; les chiffres qui en dépendent restent ouverts.`,
    stage: ({ stage, counts }: StageNeed) => `${counts === 'cartons' ? products[1] : SHEETS[1]} ${FRENCH_STAGES[stage].join('')}`,
    named,
    stageFormula: ({ out, runningPercent, setUp }: StageNeed, format: Format) =>
      `${whole(out, format)}${runningPercent > 0 ? ` ÷ (1 − ${format.number(runningPercent, 4)} %), arrondi au-dessus` : ''}${setUp > 0 ? ` + ${whole(setUp, format)} de calage` : ''}`,
    cartonsToSheets: (cartons: number, ups: number, sheets: number, format: Format) => `${made(cartons, format)} ÷ ${counted(ups, UPS)}, arrondi au-dessus, ${sheets < 2 ? 'fait' : 'font'} ${counted(sheets, SHEETS, format)}.`,
    measured: (value: number, unit: string, format: Format) => {
      const noun = unit === 'cartons' ? products : UNITS[unit];
      return noun ? counted(value, noun, format) : `${format.number(value, 3)} ${unit}`;
    },
    zones: ({ shares, zoneMm }: InkZones, format: Format) => `Couverture de la feuille par ${counted(shares.length, ['zone', 'zones'])} de ${format.length(zoneMm)}, centrées, à partir de la gauche côté impression. Le fond perdu n’est pas compté.`,
    zoneRange: (zones: InkZones, format: Format) => {
      const { asLaid, upright } = zoneSpread(zones);
      const range = ({ least, most }: typeof asLaid) => `${format.percent(least)} à ${format.percent(most)}`;
      return `${format.percent(asLaid.mean)} en moyenne, ${range(asLaid)} selon la zone${upright ? ` ; toutes les poses droites, ${range(upright)}` : ' ; tourner les poses ne change rien'}`;
    },
    inkChart: { title: 'Couverture par zone d’encrage', zone: 'zone', asLaid: 'comme implanté', upright: 'toutes les poses droites' },
    open: (missing: readonly string[]) => `ouvert, ${notGiven(missing)}`,
    purchase: (purchase: Purchase, format: Format) => purchaseLine(purchase, purchaseWords(format), format),
    purchaseInInches: (purchase: Purchase, format: Format) => purchaseLineInInches(purchase, purchaseWords(format), format),
    grainOpen: 'Le sens machine n’est pas donné : dites avant de commander quel côté porte le (M). Le premier chiffre est le côté le long des pinces.',
    reel: (widthMm: number, metres: number, kg: number, format: Format) => `D’une bobine de ${format.length(widthMm)} de laize : ${format.number(metres, 0)} m, ${format.number(kg, 1)} kg.`,
    millMinimum: (tonnes: number, cartons: number | undefined, format: Format) =>
      cartons === undefined ? `Aucun tirage n’atteint les ${format.number(tonnes)} t de la cartonnerie.` : `La cartonnerie fabrique à partir de ${format.number(tonnes)} t : atteintes à partir d’un tirage de ${whole(cartons, format)}.`,
    die: ({ die, ups, currency }: QuoteFacts, format: Format) => {
      if (!die) return [];
      const names = `${counted(die.existingUps, UPS)} sur la forme existante${die.number === undefined ? '' : ` (${die.number}${die.rack === undefined ? '' : `, rayon ${die.rack}`})`} face à ${counted(ups, UPS)} sur une neuve`;
      if (die.saving.value === null) return [`${names} : ouvert, ${notGiven(die.saving.missing)}.`];
      if (!die.breakEven) return [`${names} : la forme neuve n’économise rien.`];
      const from = die.breakEven.value === null ? `à partir de combien reste ouvert, ${notGiven(die.breakEven.missing)}` : `payée à partir d’un tirage de ${whole(die.breakEven.value, format)}`;
      const worn = die.worn.map((quantity) => `La forme existante n’a plus assez de coups pour un tirage de ${whole(quantity, format)}.`);
      return [...worn, `${names} : économise ${format.money(die.saving.value, currency)} le mille, ${from}. La gâche de calage et de roulage, égale des deux côtés, n’est pas comptée.`];
    },
    layout: ({ layouts = [] }: QuoteFacts, index: number, format: Format) => {
      const said = ({ name, own, ups, sheet, ownDie }: QuotedLayout) => {
        const what = own ? 'cette implantation' : ownDie ? `la forme existante${name === undefined ? '' : ` (${name})`}` : name ?? 'une autre';
        return `${what} : ${counted(ups, UPS)} sur ${format.size(sheet.width, sheet.height)}${ownDie ? ', pas de forme à payer' : ''}`;
      };
      const { turns = [] } = layouts[index]!;
      return { label: frenchQuantities(layouts, index, format), value: `${turns.length > 0 ? 'tour à tour, feuille par feuille : ' : ''}${[layouts[index]!, ...turns].map(said).join(' ; ')}` };
    },
    convention: ({ waste }: Pick<QuoteFacts, 'waste'>) =>
      `Gâche : ${named(waste.name)}. Chaque étape couvre aussi ce que perdent toutes les suivantes : divisé par (1 − gâche de roulage), arrondi au-dessus, puis la gâche de calage ajoutée, de la dernière étape à la première.`,
    rates: ({ ratesName, anyRates, rateSources }: Pick<QuoteFacts, 'ratesName' | 'anyRates' | 'rateSources'>) => (rateSources && Object.keys(rateSources).length > 0 ? ratesBySource(rateSources).map(({ source, figures }) => `${source.kind === 'record' ? `De la fiche ${source.name}` : source.kind === 'typed' ? 'Saisis' : 'Inventés pour l’essai'} : ${listed(figures)}.`).join(' ') : ratesName !== undefined ? `Tarifs : ${named(ratesName)}.` : anyRates ? 'Tarifs : donnés avec le dossier.' : 'Tarifs : aucun n’est donné.'),
    unitsOfFormulas: (ft2: string) => `Dans les formules, les longueurs sont en pouces (in), les surfaces en ft², les poids en kg et en g/m², comme les tarifs ; un m² fait ${ft2} ft².`,
    caution: 'Chiffres prévisionnels. Gâche, vitesses et prix sont à confirmer par l’atelier avant de promettre un prix ou de commander le carton.',
    customer: {
      title: ({ name }: QuoteFacts) => `Offre${name === undefined ? '' : ` ${name}`}`,
      answer: ({ customer, quantities }: QuoteFacts) => `${quantities.length === 1 ? 'Notre prix' : `Nos prix pour ${quantities.length} tirages`}${customer === undefined ? '' : `, pour ${customer}`}.`,
      price: (perThousand: number, total: number, currency: string, format: Format) => `${format.money(perThousand, currency)} le mille, ${format.money(total, currency)} en tout`,
      product: ({ purchases, grammage }: QuoteFacts, format: Format) => `Carton ${purchases[0]?.sheet.grade === undefined ? '' : `${purchases[0].sheet.grade}, `}${format.number(grammage)} g/m².`,
      packed: ({ quantity, packed }: QuantityQuote, format: Format) => {
        const [perCase, cases] = [packed?.perCase.value, packed?.cases.value];
        if (!packed || perCase == null || cases == null) return [];
        const { pallets, grossWeight } = packed;
        const on = pallets.value === null ? '' : ` sur ${counted(pallets.value, PALLETS, format)}`;
        const gross = grossWeight.value === null ? '' : `, ${format.number(grossWeight.value, 0)} kg brut`;
        return [`${made(quantity, format)} : ${counted(cases, CASES, format)} de ${whole(perCase, format)} au plus${on}${gross}.`];
      },
      tolerance: ({ oversPercent }: QuoteFacts, format: Format) => `Une livraison de ${format.number(oversPercent, 1)} % en plus ou en moins est d’usage ; la quantité livrée est facturée.`,
      validity: ({ date, validUntil }: QuoteFacts) => `${date === undefined ? '' : `Date : ${date}. `}${validUntil === undefined ? 'Prix sans engagement jusqu’à confirmation.' : `Prix valables jusqu’au ${validUntil}.`}`,
      caution: 'Pour les emballages alimentaires, la personne responsable choisit encres, vernis et carton selon la loi.',
      cautionHeading: 'À noter',
    },
  };
}
