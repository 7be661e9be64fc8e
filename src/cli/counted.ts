/** "1 box", "2 boxes", "0 errors". `plural` where an s will not do. */
export function counted(count: number, one: string, plural = `${one}s`): string {
  return `${count} ${count === 1 ? one : plural}`;
}
