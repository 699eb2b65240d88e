import type { IncomingHttpHeaders } from 'node:http';

/** What something is to be from now on, and the ETag (`If-Match`) of the version that this is based on. */
export type Update<Input> = { readonly ifMatch: string | undefined; readonly input: Input };

/** The update that a request asks for. */
export const updateIn = <Input>({
  headers,
  body,
}: {
  readonly headers: IncomingHttpHeaders;
  readonly body: Input;
}): Update<Input> => ({ ifMatch: headers['if-match'], input: body });
