/** A setting that a program can't start with; its message is a line that names it. */
export class WrongSettingError extends Error {
  override readonly name = 'WrongSettingError';

  /** @param setting the variable, or the file it is kept in */
  constructor(setting: string, why: string, options?: ErrorOptions) {
    super(`${setting}: ${why}`, options);
  }
}
