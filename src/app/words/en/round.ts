/** Words of the Round place. */
export const round = {
  title: 'Round',
};
