import type { Figure } from '../birds/guide.ts';
import { ours, reader } from './figures.ts';

/** The figures of the afternoon sun, all settings of that criterion. */
export const sunFigures = {
  lowUnder: ours(2, 'h', [0.5, 4]),
  highOver: ours(3.5, 'h', [1, 5]),
  fullSun: ours(0.3, 'score', [0.05, 1], 'Score of five hours of sun.'),
  hotLoss: ours(
    0.1,
    'score',
    [0, 0.3],
    'Five hours of sun score this much less for a dark box, and again in a hot July.',
  ),
  hotJuly: ours(
    32,
    '°C',
    [20, 45],
    'Mean daily July maximum, as the person entered it, from which the grade goes up a step.',
  ),
  hotRamp: ours(4, '°C', [0.5, 10], 'Over which a hot July comes to count in the score, centered on `hotJuly`.'),
  mostUnmapped: ours(
    0.9,
    'share',
    [0.1, 1],
    'Not judged where more of the disc is not drawn and nothing tall stands within `tallReach`.',
  ),
  radius: ours(40, 'm', [20, 80]),
  tallReach: ours(150, 'm', [20, 500]),
} as const satisfies Record<string, Figure>;
/** The afternoon sun's figures in force on a site. */
export const sunOn = reader('afternoon-sun', sunFigures);
