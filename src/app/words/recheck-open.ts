/** Apart from the other words of the recheck, which are fetched with it. */
export const RECHECK_OPEN = 'Recheck an evidence package';
