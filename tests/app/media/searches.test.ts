import { expect, test } from 'vitest';
import { createSearches } from '../../../src/app/media/searches.ts';

type Ended = { readonly is: 'done'; readonly answer: number };
const done = async (answer: number): Promise<Ended> => ({ is: 'done', answer });
const never = () => new Promise<Ended>(() => {});
const settled = () => new Promise((resolve) => setTimeout(resolve));

test('a search is under way until it has ended', async () => {
  const looks = createSearches<Ended>();
  looks.begin('a', () => done(7));
  expect(looks.getState().searches).toEqual({ a: { is: 'under-way' } });
  await settled();
  expect(looks.getState().searches).toEqual({ a: { is: 'done', answer: 7 } });
});

test('one called off leaves nothing, and what it still answers is not kept', async () => {
  const looks = createSearches<Ended>();
  let isCalledOff = false;
  const callOff = looks.begin('a', (signal) => {
    signal.addEventListener('abort', () => {
      isCalledOff = true;
    });
    return done(7);
  });
  callOff();
  await settled();
  expect(isCalledOff).toBe(true);
  expect(looks.getState().searches).toEqual({});
});

test('what has ended stays when it is called off, until it is forgotten', async () => {
  const looks = createSearches<Ended>();
  const callOff = looks.begin('a', () => done(7));
  looks.begin('b', never);
  await settled();
  callOff();
  expect(Object.keys(looks.getState().searches)).toEqual(['b', 'a']);
  looks.forget(['a', 'c']);
  expect(Object.keys(looks.getState().searches)).toEqual(['b']);
});

test('of many the oldest goes first', () => {
  const looks = createSearches<Ended>(2);
  for (const key of ['a', 'b', 'a', 'c']) looks.begin(key, never);
  expect(Object.keys(looks.getState().searches)).toEqual(['a', 'c']);
});
