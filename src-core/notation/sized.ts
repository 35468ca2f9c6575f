/** Headings that say of which motif a size is told. */

/** "Finished hexagon", "Size of each square": what a size is told of. */
export const SIZED =
  'motif square hexagon octagon triangle flower circle block medallion heart star snowflake coaster doily'
    .split(' ')
    .flatMap((motif) => [
      `finished ${motif}`,
      ...['size of', 'size of one', 'size of each', 'size of finished'].flatMap((of) => [
        `${of} ${motif}`,
        `finished ${of} ${motif}`,
      ]),
      `${motif} size`,
      `finished ${motif} size`,
      `${motif} measures`,
    ])
