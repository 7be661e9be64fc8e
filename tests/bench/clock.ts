/** Times for benches: processor time, so that other work on the machine counts less; the best of several passes. */

/** Milliseconds of processor time that `work` takes. */
export function cost(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** Least milliseconds over `passes` passes. */
export function best(passes: number, work: () => void): number {
  let least = Infinity;
  for (let pass = 0; pass < passes; pass++) least = Math.min(least, cost(work));
  return least;
}

export const figure = (value: number): string => {
  if (value >= 1000) return Math.round(value).toLocaleString('en-US');
  return value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2);
};

/** A table with the first column to the left. */
export function printTable(rows: readonly (readonly string[])[]): void {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  for (const row of rows) {
    console.log(row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join('   '));
  }
}
