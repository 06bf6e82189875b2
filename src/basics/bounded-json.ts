/** JSON of a stranger: bounded in size and depth before it is parsed, so that neither memory nor stack is in his hands. */
import { fail, ok, type Result } from './result.ts';

export type JsonBounds = { readonly characters: number; readonly depth: number };

export type BoundedJsonFailure =
  | { readonly code: 'json/too-large'; readonly characters: number; readonly limit: number }
  | { readonly code: 'json/too-deep'; readonly limit: number }
  | { readonly code: 'json/not-json' };

export function parseBoundedJson(text: string, bounds: JsonBounds): Result<unknown, BoundedJsonFailure> {
  if (text.length > bounds.characters)
    return fail({ code: 'json/too-large', characters: text.length, limit: bounds.characters });
  if (isDeeperThan(text, bounds.depth)) return fail({ code: 'json/too-deep', limit: bounds.depth });
  try {
    return ok(JSON.parse(text));
  } catch {
    return fail({ code: 'json/not-json' });
  }
}

function isDeeperThan(text: string, limit: number): boolean {
  let depth = 0;
  let inString = false;
  for (let i = 0; i < text.length; i++) {
    const character = text[i];
    if (inString && character === '\\') i++;
    else if (character === '"') inString = !inString;
    else if (inString) continue;
    else if (character === '[' || character === '{') depth++;
    else if (character === ']' || character === '}') depth--;
    if (depth > limit) return true;
  }
  return false;
}
