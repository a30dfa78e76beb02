import { CARTONS, MOST_QUANTITIES } from '../../press/figure-ranges.ts';
import { STAGES } from '../../press/stages.ts';
import { keepTogether } from '../../render/no-break.ts';
import { useDesk } from '../desk-context.ts';
import type { QuoteAnswer } from '../engine/protocol.ts';
import { currencyOf, type MoneyFields } from '../job/job.ts';
import { rangeOf } from '../job/money-ranges.ts';
import { quotedOf, quoteOf } from '../job/quote-of.ts';
import { boardOf } from '../job/records.ts';
import { rangeSentence } from '../words/range-sentence.ts';
import { useWords } from '../words/words.ts';
import { BoardField } from './board-field.tsx';
import { Block, CheckField, TextField } from './fields.tsx';
import { IssueList } from './issue-list.tsx';
import { Layout } from './layout.tsx';
import { NumberField } from './length-field.tsx';
import { MissingRates } from './missing-rates.tsx';
import { MoneyChart } from './money-chart.tsx';
import { NothingYet } from './nothing-yet.tsx';
import { RateFields } from './rate-fields.tsx';
import { ReportView } from './report-view.tsx';
import { isOpen, OutlinesMoney, VersionsMoney } from './run-money.tsx';
import { useAnswer } from './use-answer.ts';

type OrderFigure = 'grammage' | 'boardPrice' | 'colours' | 'varnishUnits';

export function MoneyPanel() {
  const { desk } = useDesk();
  const words = useWords();
  const { say, format, issue: sentence } = words;
  const { money } = desk.job.value;
  const chosen = desk.chosen.value;
  const asked = chosen && quoteOf(desk.job.value, desk.records.value, quotedOf(chosen));
  const faults = asked && 'faults' in asked ? asked.faults : [];
  const ask = asked && 'job' in asked ? asked : undefined;
  const { versions, outlines: { plan } } = desk.job.value;
  const shownBeside = versions.list.length > 0 ? say('as-one-version') : plan && say('shown-by-itself');
  const quote = useAnswer(ask && (() => desk.engine.ask('quote', ask)), [JSON.stringify(ask), format]);
  const set = (fields: Partial<MoneyFields>, kind = '') => desk.change((now) => ({ ...now, money: { ...now.money, ...fields } }), kind);
  const board = boardOf(desk.records.value, desk.job.value.sheet.board);
  const fromBoard: Partial<Record<OrderFigure, unknown>> = { grammage: board?.['grammage'], boardPrice: board?.['pricePerTonne'] };
  const number = (field: OrderFigure, unit?: string, rate?: string) => (
    <NumberField key={field} {...(rate !== undefined && { rate })} label={say(`field-${field}`)} {...(unit !== undefined && { unit })} placeholder={typeof fromBoard[field] === 'number' ? format.number(fromBoard[field], 3) : undefined} value={money[field]} fault={faults.includes(field) ? rangeSentence(rangeOf(field), words) : undefined}
      onInput={(text) => set({ [field]: text }, field)} />
  );
  const per = (what: string) => `${currencyOf(money)}/${what}`;
  return (
    <Layout
      controls={
        <>
          <Block title={say('order')}>
            <TextField label={say('field-quantities')} hint={say('hint-quantities')} value={money.quantities} fault={faults.includes('quantities') ? say('fault-quantities', { most: format.number(CARTONS.most, 0), count: MOST_QUANTITIES }) : undefined}
              onInput={(quantities) => set({ quantities }, 'quantities')} />
            <BoardField />
            <div class="row">
              {number('grammage', 'g/m²', 'grammage')}
              {number('boardPrice', per('t'), 'board price')}
              <TextField label={say('field-currency')} value={money.currency} fault={faults.includes('currency') ? say('fault-currency') : undefined} onInput={(currency) => set({ currency }, 'currency')} />
            </div>
            <div class="row">
              {number('colours')}
              {number('varnishUnits')}
            </div>
            <fieldset>
              <legend>{say('stages')}</legend>
              <div class="checks">
                {STAGES.filter((stage) => stage !== 'printing').map((stage) => (
                  <CheckField key={stage} label={say(`stage-${stage}`)} checked={money.stages.includes(stage)}
                    onChange={(on) => set({ stages: on ? [...money.stages, stage] : money.stages.filter((one) => one !== stage) })} />
                ))}
              </div>
            </fieldset>
          </Block>
          <RateFields />
        </>
      }
      picture={
        <div class="money">
          {!chosen && !plan && <NothingYet />}
          {quote.kind === 'issues' && (quote.issues.every(isOpen) ? quote.issues.map((issue) => <p key={issue.code} class="empty">{sentence(issue)}</p>) : <IssueList issues={quote.issues} />)}
          {chosen && versions.list.length > 0 && <VersionsMoney layout={chosen} />}
          <OutlinesMoney />
          {quote.kind === 'answer' && (shownBeside ? <details><summary>{shownBeside}</summary><QuoteView answer={quote.answer} /></details> : <QuoteView answer={quote.answer} />)}
        </div>
      }
    />
  );
}

function QuoteView({ answer }: { readonly answer: QuoteAnswer }) {
  const { say } = useWords();
  const { rows, missing, report, rates } = answer;
  return (
    <>
      <p class="answer">{keepTogether(report.answer)}</p>
      <QuantitiesTable answer={answer} />
      {missing.length > 0 && <MissingRates missing={missing} />}
      <p class="hint holds">{keepTogether(rates)}</p>
      <MoneyChart rows={rows} currency={answer.currency} />
      <details>
        <summary>{say('every-formula')}</summary>
        <ReportView report={report} />
      </details>
    </>
  );
}

function QuantitiesTable({ answer: { rows, currency } }: { readonly answer: QuoteAnswer }) {
  const { say, format } = useWords();
  const open = (value: number | null, text: (value: number) => string) => (value === null ? <span class="open">{say('open')}</span> : text(value));
  const money = (value: number | null) => open(value, (amount) => format.number(amount, 2, true));
  return (
    <div class="scrolls" tabIndex={0} role="region" aria-label={say('quantities-table')}>
      <table>
        <caption>{say('quantities-table')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('column-quantity')}</th>
            <th scope="col">{say('column-sheets')}</th>
            <th scope="col">{say('column-board')}, kg</th>
            <th scope="col">{say('column-board-cost', { currency })}</th>
            <th scope="col">{say('column-hours')}</th>
            <th scope="col">{say('column-cost', { currency })}</th>
            <th scope="col">{say('column-price', { currency })}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.quantity}>
              <th scope="row" class="number">{format.number(row.quantity, 0)}</th>
              <td class="number">{format.number(row.sheets, 0)}</td>
              <td class="number">{open(row.boardKg, (kg) => format.number(kg, 1, true))}</td>
              <td class="number">{money(row.boardCostPerThousand)}</td>
              <td class="number">{open(row.pressHours, (hours) => format.number(hours, 2, true))}</td>
              <td class="number">{money(row.costPerThousand)}</td>
              <td class="number">{money(row.pricePerThousand)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
