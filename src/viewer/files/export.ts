import { type Signal, signal } from '@preact/signals';

/** Something on the page that can be saved as a picture. */
export interface Picture {
  /** as the menu names it: "Picture of the core" */
  readonly name: string;
  /** the picture as PNG */
  readonly make: () => Promise<Blob>;
}

/** Pictures that can be saved now, in the order in which they were registered. */
export const pictures: Signal<readonly Picture[]> = signal([]);

/**
 * Offers a picture in the menu "Export" for as long as the part that draws it is there.
 *
 * @param make - draws the picture as PNG, at twice the size on screen where it can
 * @returns takes the offer back
 */
export function registerPicture(name: string, make: () => Promise<Blob>): () => void {
  const picture: Picture = { name, make };
  pictures.value = [...pictures.value.filter((other) => other.name !== name), picture];
  return () => {
    pictures.value = pictures.value.filter((other) => other !== picture);
  };
}

/** Hands a file to the browser, which puts it among the downloads. */
export function saveFile(name: string, content: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  // The download has its own hold on the content once the click is handled.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/**
 * A file name of plain characters.
 *
 * @example
 * fileName(['Rolling-road estate', 'bigger core'], 'csv') // "rolling-road-estate-bigger-core.csv"
 */
export function fileName(words: readonly string[], extension: string): string {
  const plain = words
    .join(' ')
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 80);
  return `${plain || 'scenario'}.${extension}`;
}
