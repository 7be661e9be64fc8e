/** Work that is asked for many times between two pictures of the screen, and done once before the next. */

/** Asks for the work; `ready` false puts it off to the frame after. */
export function onceAFrame(work: () => void, ready: () => boolean = () => true): () => void {
  let waiting = false;
  const turn = () => {
    if (!ready()) {
      requestAnimationFrame(turn);
      return;
    }
    waiting = false;
    work();
  };
  return () => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(turn);
  };
}
