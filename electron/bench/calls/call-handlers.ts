/** What answers each call of the contract. */
import type { Result } from '../../../core/result.ts';
import type { CallName, Reply, Request } from '../../../shared/contract.ts';

export type Handlers<N extends CallName = CallName> = {
  readonly [C in N]: (request: Request<C>) => Promise<Result<Reply<C>>> | Result<Reply<C>>;
};
