import { bleedKept } from '../../../estimate/bleed-kept.ts';
import { wasteAreas, wasteOfAreas, type WasteAreas } from '../../../estimate/waste.ts';
import { placedRings } from '../../../estimate/placed-rings.ts';
import { ringArea } from '../../../geometry/point.ts';
import { historyChart } from '../../../render/history-chart.ts';
import type { NestFacts } from '../../../render/nest-facts.ts';
import { nestReport } from '../../../render/nest-report.ts';
import { reportHtml } from '../../../render/report-html.ts';
import { sheetScene } from '../../../render/sheet-scene.ts';
import { sceneToSvg } from '../../../render/svg.ts';
import { titleFigures } from '../../../render/title-figures.ts';
import { viewOfLayout } from '../../../render/view-of-layout.ts';
import type { ExplainAnswer, ExplainAsk, Person } from '../protocol.ts';
import { wordsFor } from './language-of.ts';
import { wasteScene } from './waste-scene.ts';

/** Why so many: the report of one layout, whoever made it. */
export function explain(ask: ExplainAsk, person: Person): ExplainAnswer {
  const { language, format } = wordsFor(person);
  const areas = wasteAreas(ask.file);
  const facts = factsOf(ask, areas);
  const report = nestReport(facts, language, format);
  const scene = sheetScene(viewOfLayout(ask.file, { figures: titleFigures(facts, language.report, format) }), { words: language.picture, format });
  const chart = historyChart(facts, language.report, format);
  const pictures = [{ section: 'answer', svg: sceneToSvg(scene), onPaper: true }, ...(chart === undefined ? [] : [{ section: 'history', svg: chart, onPaper: false }])];
  return { report, waste: wasteScene(areas, scene), html: reportHtml(report, pictures) };
}

function factsOf({ file, name, limit, stopped, seconds, notes, history, limits }: ExplainAsk, areas: WasteAreas): NestFacts {
  const { sheet, rules, result = {} } = file;
  const [design] = file.designs;
  const side = (axis: 0 | 1) => Math.max(...design.outline.map((point) => point[axis]));
  const used = placedRings(file, (ring) => ring).reduce((sum, ring) => sum + ringArea(ring), 0) / 1e6;
  const cell = result['bestCell'] as { density?: number } | undefined;
  return {
    design: { name, widthMm: side(0), heightMm: side(1), areaMm2: used / file.placements.length },
    product: 'blank',
    sheet,
    ups: file.placements.length,
    ...(limit && { limit }),
    yield: used / (sheet.width * sheet.height),
    gap: rules.gap,
    bleed: rules.bleed,
    bleedMeeting: rules.bleedMeeting,
    rotations: design.rotations,
    source: String(result['source'] ?? ''),
    stopped,
    seed: Number(result['seed'] ?? 1),
    ...(seconds !== undefined && { seconds }),
    ...(cell?.density !== undefined && { bestCellDensity: cell.density }),
    waste: wasteOfAreas(areas),
    assumed: notes,
    ...(rules.bleedMeeting === 'cut' && { bleedKept: bleedKept(file) }),
    history,
    limits,
  };
}
