/** Parses a HID report descriptor into its reports and controls (HID 1.11, 6.2.2). */
import { done, failed, type Problem, type Result } from '../result.ts';
import { CollectionStack } from './collection-stack.ts';
import type { Descriptor, Usage } from './control.ts';
import { GlobalState } from './global-state.ts';
import { readItem, type Item } from './item.ts';
import { limits } from './limits.ts';
import { LocalState } from './local-state.ts';
import { ReportBuilder } from './report-builder.ts';
import { mainTags } from './tags.ts';

/**
 * Any bytes give a descriptor or a problem with the byte offset of the item at fault; nothing is thrown and the time is
 * bounded by `limits`. Refused is what leaves the layout of the bits in doubt: a cut item, unbalanced collections,
 * Push, Pop or delimiters, a bad report id, a reversed range, an unknown global item, anything over a limit. What only
 * leaves a name in doubt is passed over, as Linux does: unknown main and local items, reserved and long items.
 */
export function parseDescriptor(bytes: Uint8Array): Result<Descriptor> {
  if (bytes.length === 0)
    return failed('descriptor-empty', 'The report descriptor has no bytes; read it from the pad again.', 0);
  if (bytes.length > limits.descriptorBytes)
    return failed(
      'descriptor-too-long',
      `A report descriptor has at most ${limits.descriptorBytes} bytes, this one ${bytes.length}; check the file.`,
      limits.descriptorBytes,
    );
  const parser = new Parser();
  let items = 0;
  for (let at = 0; at < bytes.length; items += 1) {
    if (items === limits.items)
      return failed(
        'items-too-many',
        `From byte ${at} on there are more than ${limits.items} items; check the file.`,
        at,
      );
    const item = readItem(bytes, at);
    if (!item.ok) return item;
    const problem = parser.take(item.value);
    if (problem !== null) return { ok: false, problem };
    at = item.value.end;
  }
  return parser.finish();
}

class Parser {
  readonly #globals = new GlobalState();
  readonly #collections = new CollectionStack();
  readonly #reports = new ReportBuilder();
  #locals = new LocalState();

  take(item: Item): Problem | null {
    if (item.kind === 'global') return this.#globals.take(item);
    if (item.kind === 'local') return this.#locals.take(item, this.#globals.now.usagePage);
    if (item.kind === 'main') return this.#takeMain(item);
    return null;
  }

  finish(): Result<Descriptor> {
    const problem = this.#collections.finish() ?? this.#locals.close(0);
    return problem === null ? done(this.#reports.finish()) : { ok: false, problem };
  }

  #takeMain(item: Item): Problem | null {
    const locals = this.#locals;
    this.#locals = new LocalState();
    const problem = locals.close(this.#globals.now.usagePage);
    if (problem !== null) return problem;
    switch (item.tag) {
      case mainTags.input:
        return this.#reports.add('input', item, this.#globals.now, locals.sets, this.#collections);
      case mainTags.output:
        return this.#reports.add('output', item, this.#globals.now, locals.sets, this.#collections);
      case mainTags.feature:
        return this.#reports.add('feature', item, this.#globals.now, locals.sets, this.#collections);
      case mainTags.collection:
        return this.#collections.open(item, firstUsage(locals));
      case mainTags.endCollection:
        return this.#collections.close(item);
      default:
        return null;
    }
  }
}

function firstUsage(locals: LocalState): Usage | null {
  const first = locals.sets[0]?.preferred;
  return first === undefined ? null : { usagePage: first.page, usage: first.first };
}
