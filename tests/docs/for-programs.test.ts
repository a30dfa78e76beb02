import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';

const root = join(import.meta.dirname, '..', '..');
const text = readFileSync(join(root, 'docs', 'for-programs.md'), 'utf8');
const examples = [...text.matchAll(/```js\n([\s\S]*?)```\n\n```output\n([\s\S]*?)```/g)].map(([, code, output]) => ({ name: /from 'blankwright'|import \{([^}]*)\} from 'blankwright'/.exec(code!)?.[1]?.trim() ?? 'example', code: code!, output: output! }));

test('every example of the page is here, each with its output', () => {
  expect(examples).toHaveLength(text.match(/```js/g)!.length);
  expect(examples.length).toBeGreaterThan(3);
});

// As a program would that has the package installed: its name leads to the compiled front door.
test.each(examples)('$name', async ({ code, output }) => {
  const { stdout, stderr } = await promisify(execFile)(process.execPath, ['--input-type=module', '-e', code], { cwd: root });
  expect({ stdout, stderr }).toEqual({ stdout: output, stderr: '' });
});
