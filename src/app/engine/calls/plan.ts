/** The whole pipeline: Site → Plan. */
import type { Plan } from '../../../plan-types.ts';
import type { Site } from '../../../site/types.ts';
import type { CallTools } from '../protocol.ts';

const rooms = import.meta.glob<{ makePlan(site: Site, options?: unknown): Plan | Promise<Plan> }>('../../../plan.ts');

export async function plan({ site }: { site: Site }, _tools: CallTools): Promise<Plan> {
  const load = rooms['../../../plan.ts'];
  if (!load) throw new Error('the room that chooses posts is not built yet');
  return (await load()).makePlan(site);
}
