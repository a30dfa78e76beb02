/** What the page can be asked to do with the sheet. */
export type Wish = 'solve-rest' | 'tidy';

/** How the page's work on a wish stands. */
export interface Working {
  readonly wish: Wish;
  readonly seconds: number;
  /** Blanks of the best so far, and the least limit known. */
  readonly ups?: number | undefined;
  readonly limit?: number | undefined;
  readonly stopping?: boolean;
}
