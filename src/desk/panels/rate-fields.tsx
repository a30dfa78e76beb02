import { MACHINE_OF } from '../../estimate/quote.ts';
import { useDesk } from '../desk-context.ts';
import { currencyOf, type MoneyFields } from '../job/job.ts';
import { rangeOf } from '../job/money-ranges.ts';
import { askedRates, askedStages, machineFields, type RateField, type RateName } from '../job/rate-fields.ts';
import { nameOfRecord } from '../job/records.ts';
import { ratesRecord, settleRates, type SettledRate } from '../job/settled-rates.ts';
import { takeFile } from '../taking.ts';
import { rangeSentence } from '../words/range-sentence.ts';
import { useWords } from '../words/words.ts';
import { Block, CheckField, ChoiceField } from './fields.tsx';
import { FilePicker } from './file-picker.tsx';
import { NumberField } from './length-field.tsx';
import { OwnRecords } from './own-records.tsx';

/** Every rate that the quote asks for: what an empty field stands for shows in it. */
export function RateFields() {
  const { desk } = useDesk();
  const words = useWords();
  const { say, format } = words;
  const fault = (name: RateName) => rangeSentence(rangeOf(name), words);
  const { money, sheet } = desk.job.value;
  const records = desk.records.value;
  const { settled, faults } = settleRates(money, sheet, records);
  const set = (fields: Partial<MoneyFields>, kind = '') => desk.change((job) => ({ ...job, money: { ...job.money, ...fields } }), kind);
  const placeholderOf = (rate: SettledRate | undefined) => rate && format.number(rate.value, 3);
  const field = (one: RateField) => (
    <NumberField key={one.name} rate={one.figure} label={labelOf(one, say)} unit={unitOf(one, currencyOf(money), say)} value={money[one.name] ?? ''} fault={faults.includes(one.name) ? fault(one.name) : undefined}
      placeholder={placeholderOf(settled.get(one.name))} onInput={(text) => set({ [one.name]: text }, one.name)} />
  );
  const record = ratesRecord(records, money.ratesRecord);
  return (
    <Block title={say('rates')}>
      {records.rates.length > 0 && (
        <ChoiceField label={say('field-rates-record')} value={record?.id ?? 'none'} onChange={(chosen) => set({ ratesRecord: chosen })}
          options={[['none', say('none')] as const, ...records.rates.map((one) => [one.id, nameOfRecord(one)] as const)]} />
      )}
      <OwnRecords kinds={['rates']} />
      <CheckField label={say('invented-rates')} checked={money.inventedRates} onChange={(on) => set({ inventedRates: on })} />
      {askedStages(money).map((stage) => (
        <fieldset key={stage}>
          <legend>{say(`machine-${MACHINE_OF[stage].key}`)}</legend>
          <div class="row">{machineFields(stage).map(field)}</div>
        </fieldset>
      ))}
      <div class="row">{askedRates(money).filter(({ at }) => at.length === 1).map(field)}</div>
      <FilePicker accept=".json,.csv" label={say('choose-rates')} hint={say('hint-rates')} onFile={(name, content) => void takeFile(desk, name, content)} />
    </Block>
  );
}

type Say = ReturnType<typeof useWords>['say'];

function labelOf({ name, at }: RateField, say: Say): string {
  if (at.length === 1) return say(`field-${name as 'margin'}`);
  const figure = { hourlyRate: 'machine-rate', speed: 'machine-speed', makereadyMinutes: 'machine-makeready' } as const;
  return say(figure[at[1]], { machine: say(`machine-${at[0]}`) });
}

const UNITS: Readonly<Record<string, string>> = { marginPercent: '%', inkGramsPerM2: 'g/m²', coatingGramsPerM2: 'g/m²', inkCoverage: '0–1', carbonPerTonne: 'kg/t' };
const PER: Readonly<Record<string, string>> = { inkPricePerKg: '/kg', coatingPricePerKg: '/kg', packingPerThousand: '/1000', freightPerTonne: '/t' };

function unitOf({ at }: RateField, currency: string, say: Say): string {
  if (at.length === 2) return { hourlyRate: `${currency}/h`, speed: say('sheets-per-hour'), makereadyMinutes: 'min' }[at[1]];
  return UNITS[at[0]] ?? `${currency}${PER[at[0]] ?? ''}`;
}
