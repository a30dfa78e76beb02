import { countStations } from '../../../estimate/gang/deal-stations.ts';
import { pressingsByQuantity } from '../../../estimate/gang/run-lengths.ts';
import { stationsThatChange } from '../../../estimate/gang/plan-versions.ts';
import type { SoundLayout } from '../../../layout/sound.ts';
import { weighStations } from '../../../pipeline/gang/weigh-stations.ts';
import { coatingForm } from '../../../render/coating.ts';
import { dieRules } from '../../../render/die-rules.ts';
import { formScene } from '../../../render/form-scene.ts';
import type { GangFacts, GangForm } from '../../../render/gang-facts.ts';
import { gangJson } from '../../../render/gang-json.ts';
import { gangReport } from '../../../render/gang-report.ts';
import { handoverFacts, type HandoverDetails } from '../../../render/handover-facts.ts';
import { crewTicket, type HandoverLanguage } from '../../../render/handover-pages.ts';
import { placementsCsv } from '../../../render/placements-csv.ts';
import { reportHtml } from '../../../render/report-html.ts';
import { sceneToSvg } from '../../../render/svg.ts';
import { viewOfLayout } from '../../../render/view-of-layout.ts';
import type { OutputFile, VersionsOnForms } from '../protocol.ts';
import { languageOf } from './language-of.ts';

/**
 * What is handed over besides where several versions share the sheet: the plan as data and as a page, and for each form
 * its picture with the letters of the versions, its stations as data, and a ticket for the crew. The die is the same for all.
 */
export async function versionFiles(sound: SoundLayout, details: HandoverDetails, versions: VersionsOnForms, language: HandoverLanguage): Promise<OutputFile[]> {
  const facts = await factsOf(versions);
  const { picture: words, format, locale } = language;
  const bare = viewOfLayout(sound, { grain: details.grain, figures: [] });
  const rules = dieRules(bare);
  const own = languageOf(locale);
  const gangWords = own.gang;
  const forms = facts.forms.map((form, number) => {
    const prints = form.prints!;
    const letters = prints.map((name) => versions.letters[facts.ids.indexOf(name)] ?? '–');
    const shown = facts.ids.flatMap((id, v) => (form.counts[v]! > 0 ? [{ label: versions.letters[v]!, value: `${id}, ${gangWords.ups(form.counts[v]!)}` }] : []));
    const figures = [{ label: gangWords.labels.pressings, value: format.number(form.pressings, 0) }, ...shown.slice(0, MOST_CELLS)];
    const picture = { section: 'answer', svg: sceneToSvg(formScene({ ...bare, figures }, letters, { words, format })), onPaper: true };
    const all = handoverFacts(sound, bare, rules, { ...details, versions: prints });
    const name = `form-${number + 1}`;
    return { picture: { ...picture, section: name }, files: [
      { name: `${name}.svg`, content: picture.svg },
      { name: `${name}-placements.csv`, content: placementsCsv(sound, bare, details.back, prints) },
      { name: `${name}-crew-ticket.html`, content: reportHtml(crewTicket(all, language, coatingForm(sound, bare)), [picture]) },
    ] };
  });
  return [
    { name: 'versions.json', content: gangJson(facts) },
    { name: 'versions.html', content: reportHtml(gangReport(facts, own, format), forms.map(({ picture }) => picture)) },
    ...forms.flatMap(({ files }) => files),
  ];
}

/** Versions named in a title block. */
const MOST_CELLS = 8;

/** Forms that nothing needs are left out. What is proved of a plan no longer asked for is what holds for every plan. */
async function factsOf({ ask, forms: printed, lowerBound, empty, currency }: VersionsOnForms): Promise<GangFacts> {
  const ids = ask.versions.map(({ id }) => id);
  const quantities = ask.versions.map(({ quantity }) => quantity);
  const counts = countStations(printed, ids.length);
  const oversLimits = ask.versions[0]?.overs && ask.versions.map(({ overs: limits }) => ({ least: limits?.least ?? 0, greatest: limits?.greatest ?? Infinity }));
  const { pressings, overs } = await weighStations({ quantities, counts, limits: oversLimits });
  const forms: GangForm[] = [];
  printed.forEach((form, f) => {
    if (pressings[f]! === 0) return;
    const made = { counts: counts[f]!, pressings: pressings[f]!, prints: form.map((row) => (row === undefined ? empty : ids[row]!)) };
    forms.push({ ...made, changes: forms.length === 0 ? undefined : stationsThatChange(forms.at(-1)!, made) });
  });
  const total = pressings.reduce((sum, run) => sum + run, 0);
  const worth = (count: number, runs: number) => (ask.costs ? count * ask.costs.form + runs * ask.costs.pressing : runs);
  const value = worth(forms.length, total);
  const bound = Math.min(value, lowerBound ?? worth(Math.ceil(ids.length / ask.stations), pressingsByQuantity({ stations: ask.stations, quantities })));
  return { ids, quantities, stations: ask.stations, forms, formsAllowed: Math.max(ask.forms, forms.length), costs: ask.costs, currency, pressings: total, cost: ask.costs && value, lowerBound: bound, optimal: bound === value && forms.length <= ask.forms, overs, oversLimits };
}
