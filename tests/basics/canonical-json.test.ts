import { expect, test } from 'vitest';
import { canonicalJson } from '../../src/basics/canonical-json.ts';

// RFC 8785, 3.2.2 and 3.2.3: the worked example (from memory), its numbers, literals, string escapes and the order of its keys.
test('the example of the standard comes out as it is printed there', () => {
  const input = String.raw`{
    "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
    "literals": [null, true, false]
  }`;
  const expected = String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`;
  expect(canonicalJson(JSON.parse(input))).toBe(expected);
});

test('keys go by their UTF-16 code units', () => {
  const keys = ['\u20ac', '\r', '\ufb33', '1', '\ud83d\ude00', '\u0080', '\u00f6'];
  const value = Object.fromEntries(keys.map((key) => [key, 0]));
  expect(Object.keys(JSON.parse(canonicalJson(value)))).toEqual(
    // A whole number as a key comes first in every JavaScript object, whatever the text says.
    ['1', '\r', '\u0080', '\u00f6', '\u20ac', '\ud83d\ude00', '\ufb33'],
  );
  expect(canonicalJson(value).indexOf('"\\r"')).toBe(1);
});

test('a key named as a prototype is a key like any other', () => {
  expect(canonicalJson(JSON.parse('{"b":1,"__proto__":{"a":2}}'))).toBe('{"__proto__":{"a":2},"b":1}');
});
