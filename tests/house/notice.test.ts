import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

it('names every library it stands on', () => {
  const notice = readFileSync('NOTICE.md', 'utf8');
  const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8'));
  expect(Object.keys(dependencies).filter((name) => !notice.includes(name))).toEqual([]);
});
