/**
 * A mistake that the user can mend: the commands print its message without a stack and exit with 1. Everything else that is thrown is a bug.
 *
 * The message gives the problem, the place, what was found and what was expected; `hint` is at most one.
 */
export class UserError extends Error {
  override readonly name = 'UserError';
  readonly code: string;
  readonly hint: string | undefined;

  constructor(code: string, message: string, hint?: string) {
    super(message);
    this.code = code;
    this.hint = hint;
  }
}
