/** The longest lengths that the record's format takes, so that nothing can be entered that would not open again. */
export const MOST_READING_MM = 10_000;
export const MOST_REFERENCE_MM = 5_000;
/** The check line of the printed target is nominally 100 mm: what is far from it was typed in another unit. */
export const LEAST_CHECK_MM = 50;
export const MOST_CHECK_MM = 200;
export const MOST_PIN_END_MM = 200;
export const MOST_STROKE_MM = 200;
