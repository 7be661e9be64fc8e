/** Words of the Land place. */
export const land = {
  title: 'Land',
};
