/** The trade's usual cautions, in the order they matter on the spot; sources are in the domain notes of docs/. */
export const CAUTIONS_HEADING = 'Before the first picture';
export const CAUTIONS_READ = 'I have read this';

export const CAUTIONS: readonly string[] = [
  'Level ground, engine off, key out. Chock the wheels both ways before the spring brakes are released: nothing else holds the vehicle.',
  'One helper in the cab. Agree the words and say them back: “applying”, “hold”, “releasing”.',
  'Keep hands and head clear of rod, arm and shoes. They move with more than a ton of force, and loss of air can move them by itself. Photograph from outside the swing.',
  'Never open, strike, heat or cut a spring brake chamber.',
  'Never go under a vehicle that only a jack or its air suspension holds up.',
  'Eye protection on. No compressed air on brake dust: it may hold asbestos.',
  'Let hot drums cool: they burn, and they make the stroke read long.',
  'At the roadside: off the carriageway, vest on, lights on, not alone under the vehicle.',
  'Over the limit: do not drive on to try again, and do not turn an automatic adjuster back until the number looks right. Find the cause.',
];
