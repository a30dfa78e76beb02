import { z } from 'zod';

/** What is wrong or doubtful: a code that stays, where it is, and a sentence for people. */
export const issueReply = z.object({
  code: z.string(),
  severity: z.enum(['error', 'warning', 'note']),
  place: z.tuple([z.number(), z.number()]).optional().describe('mm, in the axes of the drawing or sheet'),
  where: z.string().optional().describe('a field, line or element'),
  facts: z.record(z.string(), z.union([z.string(), z.number()])).optional().describe('the figures and names that the sentence quotes, for who words it anew; lengths in mm'),
  message: z.string().describe('what is wrong and what to do, in English'),
});
export type IssueReply = z.infer<typeof issueReply>;

/** What comes instead of a reply. */
export const refusal = z.object({ issues: z.array(issueReply).min(1) });
