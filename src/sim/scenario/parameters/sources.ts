/** What a default rests on where the trade agrees on its size. */
export const COMMON_PRACTICE = 'common practice, no published source';
/** What a default rests on where not even the trade agrees: a value of the right size, to be fitted to a log. */
export const NO_PUBLISHED_FIGURE = 'right order of size only, no published source: fit it to a log';
