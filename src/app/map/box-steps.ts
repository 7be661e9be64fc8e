/** Where an arrow, Home or End leads from box `at` of `count`; null for any other key. */
export function stepTo(key: string, at: number, count: number): number | null {
  if (key === 'ArrowRight' || key === 'ArrowDown') return (at + 1) % count;
  if (key === 'ArrowLeft' || key === 'ArrowUp') return (at - 1 + count) % count;
  if (key === 'Home') return 0;
  return key === 'End' ? count - 1 : null;
}
