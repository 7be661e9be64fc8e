/** Words of the Season place. */
export const season = {
  title: 'Season',
};
