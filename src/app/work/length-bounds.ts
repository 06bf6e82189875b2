/** The longest lengths that the record's format takes, so that nothing can be entered that would not open again. */
export const MOST_READING_MM = 10_000;
export const MOST_REFERENCE_MM = 5_000;
export const MOST_STROKE_MM = 200;
