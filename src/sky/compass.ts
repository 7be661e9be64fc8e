const letters = ['N', 'NNE', 'NE', 'ENE', 'E', 'ESE', 'SE', 'SSE', 'S', 'SSW', 'SW', 'WSW', 'W', 'WNW', 'NW', 'NNW'];
const words: Readonly<Record<string, string>> = { N: 'north', E: 'east', S: 'south', W: 'west' };

/** "ENE" spoken: "east-northeast"; "NE" is "northeast". */
function spoken(name: string): string {
  const parts = [...name].map((letter) => words[letter]);
  return parts.length === 3 ? `${parts[0]}-${parts[1]}${parts[2]}` : parts.join('');
}

/** Index 0–15 of the nearest of the sixteen compass points. */
const nearest = (degrees: number) => Math.round((((degrees % 360) + 360) % 360) / 22.5) % 16;

/** Letters of the nearest of the sixteen compass points, such as "ESE", for degrees clockwise from north. */
export function compassWord(degrees: number): string {
  return letters[nearest(degrees)]!;
}

/** A bearing as one says it aloud: "east", "just south of east", "east-southeast". */
export function compassPhrase(degrees: number): string {
  const index = nearest(degrees);
  const name = spoken(letters[index]!);
  const past = ((((degrees - index * 22.5 + 180) % 360) + 360) % 360) - 180;
  if (index % 2 === 1 || Math.abs(past) <= 2) return name;
  // From a main point one leans toward the next cardinal on that side.
  const side = index % 4 === 0 ? index + (past > 0 ? 4 : -4) : index + (past > 0 ? 2 : -2);
  return `just ${spoken(letters[(side + 16) % 16]!)} of ${name}`;
}
