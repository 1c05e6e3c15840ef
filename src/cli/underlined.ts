/** A heading with a line of `mark` below it. */
export const underlined = (heading: string, mark = '='): string[] => [heading, mark.repeat(heading.length)];
