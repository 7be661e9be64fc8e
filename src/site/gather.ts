/** Many issues of one kind → the first few and a count. */
import type { Issue } from './types.ts';

/** How many of one kind are told one by one; errors are all told. */
const toldSingly = 25;

/** Keeps the first of each kind and puts "and 117 more" behind the last of them. */
export function gather(issues: readonly Issue[]): Issue[] {
  const counts = new Map<string, number>();
  for (const { id } of issues) counts.set(id, (counts.get(id) ?? 0) + 1);
  const seen = new Map<string, number>();
  return issues.flatMap((issue) => {
    const n = (seen.get(issue.id) ?? 0) + 1;
    seen.set(issue.id, n);
    const count = counts.get(issue.id) ?? 0;
    if (issue.severity === 'error' || count <= toldSingly || n < toldSingly) return [issue];
    if (n > toldSingly) return [];
    return [{ ...issue, sentence: `${issue.sentence} The same holds for ${count - toldSingly} more.` }];
  });
}
