import { inputError } from '../../base/issue.ts';
import { parseLengthMm } from '../../base/units.ts';
import { dielineOfBlank, styledBlank, styleOf } from '../../dieline/styles/dieline-of-style.ts';
import { boundText } from '../../dieline/styles/parameter.ts';
import type { Style } from '../../dieline/styles/style.ts';
import { STYLES } from '../../dieline/styles/styles.ts';
import { dielineSvg } from '../../render/dieline-svg.ts';
import { stylePicture } from '../../render/style-picture.ts';
import { sceneToSvg } from '../../render/svg.ts';
import { action, DONE, type RegisterCommand } from '../command.ts';
import { writeAll } from '../files.ts';
import { createOptionReader, LENGTH_WANTED, oneOf } from '../option-reader.ts';

export const registerBlank: RegisterCommand = (program) => {
  const collect = (value: string, before: readonly string[]) => [...before, value];
  program
    .command('blank')
    .description('Draws a dieline from dimensions: cartons, sleeves, trays, cup fans, labels. Without a style it lists them.')
    .argument('[style]', 'such as straight-tuck')
    .argument('[dimensions...]', 'in mm, mostly length, width, depth; --explain names them')
    .option('--set <name=mm>', 'another value for an allowance, such as glueFlap=12; repeatable', collect, [])
    .option('--grain <x|y|any>', 'fibre direction on the drawing; by default the usual one of the style')
    .option('--explain', 'list the parameters of the style, their limits and where their usual values come from; with --svg a picture with dimensions')
    .option('--svg <file>', 'write the drawing there; without it the drawing goes to standard output')
    .action(
      action((id: string | undefined, dimensions: readonly string[], raw: Readonly<Record<string, unknown>>) => {
        const reader = createOptionReader(raw);
        const grain = reader.read('--grain', oneOf('x', 'y', 'any'), 'x, y or any is wanted');
        reader.finish();
        const { svg, explain } = raw as { svg?: string; explain?: boolean };
        if (id === undefined) return print(STYLES.map(usage).join(''));
        const style = styleOf(id);
        if (explain) {
          print(explained(style));
          if (svg === undefined) return DONE;
        }
        const given = dimensions.length === 0 && explain ? style.dimensions.map(({ example }) => String(example)) : dimensions;
        const blank = styledBlank(id, { ...readDimensions(style, given), ...readSettings(raw.set as readonly string[]) });
        const content = explain ? sceneToSvg(stylePicture(blank)) : dielineSvg(`${id} ${given.join(' x ')} mm`, dielineOfBlank(blank, grain), { id, values: blank.values });
        writeAll([{ path: svg ?? '-', content }]);
        return DONE;
      }),
    );
};

function print(text: string): number {
  process.stdout.write(text);
  return DONE;
}

function usage({ id, dimensions, description }: Style): string {
  return `${[id, ...dimensions.map(({ name }) => name.toUpperCase())].join(' ')}\n    ${description}\n`;
}

function explained(style: Style): string {
  const dimensions = style.dimensions.map(({ name, meaning, least, most }) => `  ${name}: ${meaning}; ${boundText(least)} to ${boundText(most)}\n`);
  const allowances = style.allowances.map(({ name, meaning, usual, least, most, source }) => `  ${name}: ${meaning}\n    usual ${boundText(usual)}; from ${boundText(least)} to ${boundText(most)}; source: ${source}\n`);
  const grain = style.grain ? `Grain along ${style.grain.along}: ${style.grain.source}.\n` : '';
  return [usage(style), 'Dimensions, mm:\n', ...dimensions, ...(allowances.length > 0 ? ['Allowances, mm, set with --set name=value:\n', ...allowances] : []), grain].join('');
}

function readDimensions({ id, dimensions }: Style, given: readonly string[]): Record<string, number> {
  const wanted = dimensions.map(({ name }) => name).join(', ');
  if (given.length > dimensions.length) throw inputError('style-too-many-dimensions', { where: id, facts: { wanted, given: given.length } });
  return Object.fromEntries(given.map((text, i) => [dimensions[i].name, length(dimensions[i].name, text)]));
}

function readSettings(settings: readonly string[]): Record<string, number> {
  return Object.fromEntries(settings.map((setting) => {
    const [name, text = ''] = setting.split('=');
    return [name, length(`--set ${name}`, text)];
  }));
}

function length(where: string, text: string): number {
  const mm = parseLengthMm(text);
  if (mm === undefined) throw inputError('option-not-valid', { where, facts: { value: text, expected: LENGTH_WANTED } });
  return mm;
}
