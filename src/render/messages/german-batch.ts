import type { Format } from '../format.ts';
import { boardText, englishBatch, type BatchWords } from './english-batch.ts';
import { germanCounted } from './german-counted.ts';

const schachteln = (count: number, format: Format) => germanCounted(count, 'Schachtel', 'Schachteln', format);

export const germanBatch: BatchWords = {
  size: englishBatch.size,
  title: ({ name, cartons, sheets }, format) => `${name}: ${schachteln(cartons.length, format)} auf ${germanCounted(sheets.length, 'Bogenformat', 'Bogenformaten', format)}`,
  answer: (facts, format) => {
    const gaining = facts.cartons.filter(({ saving }) => saving !== undefined && saving.boardM2 > 0);
    const known = facts.cartons.filter(({ saving }) => saving !== undefined);
    const unfinished = facts.complete ? '' : ' Soweit bis jetzt; der Lauf wurde vor dem Ende abgebrochen.';
    if (facts.cartons.length === 0) return `Von ${schachteln(facts.refused.length, format)} ließ sich keine anordnen.${unfinished}`;
    if (known.length === 0) return `${schachteln(facts.cartons.length, format)} angeordnet; was ein Jahr spart, ist nicht bekannt, denn zu keiner gibt es Jahresmenge und üblichen Bogen, auf den sie passt.${unfinished}`;
    if (gaining.length === 0) return `Von ${schachteln(known.length, format)} braucht keine auf einem anderen Bogen weniger Karton als auf ihrem üblichen.${unfinished}`;
    return `${format.number(gaining.length, 0)} von ${schachteln(known.length, format)} ${gaining.length === 1 ? 'braucht' : 'brauchen'} auf einem anderen Bogen weniger Karton als auf dem üblichen: ${boardText(facts.total, facts.currency, format)} im Jahr.${unfinished}`;
  },
  headings: { cartons: 'Was jede im Jahr spart', sheets: 'Bogen für Bogen', changed: 'Ein früheres Rechenwerk antwortete anders', setAside: 'Zurückgelegt: immer wieder gescheitert', refused: 'Schachteln, die nicht zu brauchen waren', caution: 'Bevor Karton bestellt wird' },
  doubtful: (number, format) => `Zweifelhafte Zeichnungen: ${format.number(number, 0)}`,
  cartonHead: (currency, money, { boardUnit: { name: area } }) => ['Schachtel', 'üblicher Bogen', 'bester Bogen', 'Stück im Jahr', 'Nutzen jetzt', 'Nutzen', 'höchstens', `${area}/1000 jetzt`, `${area}/1000`, `${area} im Jahr`, ...(money ? [`${currency} im Jahr`] : [])],
  sheetHead: (currency, money, { boardUnit: { name: area } }) => ['Bogen', 'bester für', `${area} im Jahr`, 'kg im Jahr', ...(money ? [`${currency} im Jahr`] : [])],
  none: 'keiner',
  pictured: ({ id, name, saving }, currency, format) => `${name ?? id}${saving === undefined ? '' : `: ${boardText(saving, currency, format)} im Jahr`}`,
  more: (number, format) => `… und ${format.number(number, 0)} weitere im JSON und auf der Seite.`,
  sheetsNote: 'Im Jahr, wenn der Bogen neben den üblichen gekauft und für die Schachteln genommen würde, denen er nützt. Die Bogen addieren sich nicht: eine Schachtel zählt bei jedem Bogen einmal, der ihr nützt.',
  changed: (carton, sheet, before, ups, engine) => `${carton} auf ${sheet}: früher ${before} Nutzen (Rechenwerk ${engine}), jetzt ${ups}; beide sind aufbewahrt.`,
  setAside: (carton, sheet, message) => `${carton} auf ${sheet}: ${message}`,
  refused: (id, reasons) => `${id}: ${reasons}`,
  caution: 'Die Zahlen sind Nettokarton der gefundenen Standbogen: Einrichte- und Fortdruckzuschuss kommen auf beiden Seiten hinzu, und ein neuer Bogen kann eine neue Stanzform brauchen. Messer, Abstände und Greiferrand werden mit der Anleitung der Maschine und dem Stanzformenbauer abgestimmt, bevor eine Form bestellt wird.',
};
