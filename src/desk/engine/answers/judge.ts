import { judge, type Judgement } from '../../../layout/judge.ts';
import type { LayoutFile } from '../../../layout/layout-file.ts';
import type { Host } from '../host.ts';

export function judgeLayout(file: LayoutFile, { goesOn }: Pick<Host<'judge'>, 'goesOn'>): Judgement {
  return judge(file, goesOn);
}
