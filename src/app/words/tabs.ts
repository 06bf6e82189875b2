/** An inspection is worked on in one tab or window at a time. */
export const TABS = {
  elsewhere: (unit: string) =>
    `“${unit}” is open in another tab or window. To go on here, touch it in the list below: it then closes there, and nothing entered is lost.`,
  taken: (unit: string) =>
    `“${unit}” was taken over by another tab or window. All that you entered here went with it.`,
  gone: 'This inspection is no longer on this device: another tab or window removed it.',
};
