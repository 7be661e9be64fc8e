/** What a press on "What is inside?" does: a new draft, another state for the open one, or the nest key. */

import type { VisitState } from '../../../visits/visit.ts';
import { beginVisit, changeDraft } from '../../actions/round.ts';
import { setRound } from '../../actions/visit-log.ts';
import type { Stop } from '../../field/field-round.ts';
import { withState } from '../../field/visit-draft.ts';
import type { Store } from '../../store.ts';

/** `unsure` notes a nest whose bird is not known and opens the key over it. */
export function chooseState(store: Store, stop: Stop, state: VisitState | 'unsure'): void {
  const { draft } = store.state.round;
  if (state === 'unsure') {
    if (draft?.post !== stop.post) beginVisit(store, stop, 'building');
    changeDraft(store, { bird: null });
    setRound(store, { asking: true });
    return;
  }
  if (draft?.post === stop.post) changeDraft(store, withState(draft, state));
  else beginVisit(store, stop, state);
}
