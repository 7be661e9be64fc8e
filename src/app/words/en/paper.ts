/** Words of the Paper place. */
export const paper = {
  title: 'Paper',
};
