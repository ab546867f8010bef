/** As much of an OpenAPI document as the page shows. */
interface Described {
  readonly info: { readonly title: string; readonly description?: string | undefined };
  readonly paths?: object | undefined;
  readonly components?: { readonly schemas?: object | undefined } | undefined;
}

interface Operation {
  readonly summary?: string;
  readonly description?: string;
  readonly parameters?: readonly {
    readonly name: string;
    readonly in: string;
    readonly required?: boolean;
    readonly description?: string;
    readonly schema?: { readonly description?: string };
  }[];
  readonly requestBody?: { readonly content?: Readonly<Record<string, { readonly schema?: unknown }>> };
  readonly responses?: Readonly<
    Record<
      string,
      {
        readonly description?: string;
        readonly content?: Readonly<Record<string, { readonly schema?: unknown }>>;
      }
    >
  >;
}

const METHODS = ["get", "put", "post"] as const;

export const PAGE_STYLE = `
:root { color-scheme: light dark; font: 1rem/1.5 system-ui, sans-serif; }
body { max-width: 60rem; margin: 2rem auto; padding: 0 1rem; }
article { border-top: 1px solid; padding: 0.5rem 0; }
code, pre { font: 0.9rem/1.4 ui-monospace, monospace; }
pre { overflow-x: auto; }
dt { font-weight: 600; }
dd { margin: 0 0 0.5rem 1rem; }
`;

const plain = (text: string) =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

/** The description as one plain page, without scripts. */
export function descriptionPage({ info, paths = {}, components }: Described): string {
  const operations = Object.entries(paths).flatMap(([path, item]) =>
    METHODS.flatMap((method) => {
      const operation = item[method];
      return operation === undefined ? [] : [article(method, path, operation as Operation)]; // as OpenAPI 3.1 has it
    }),
  );
  const schemas = Object.entries(components?.schemas ?? {}).map(
    ([name, schema]) =>
      `<article id="${plain(name)}"><h3>${plain(name)}</h3><pre>${plain(JSON.stringify(schema, null, 2))}</pre></article>`,
  );
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>${plain(info.title)}: the server's routes</title><link rel="stylesheet" href="/api/page.css"></head>
<body><main>
<h1>${plain(info.title)}: the server's routes</h1>
<p>${plain(info.description ?? "")} The same for programs: <a href="/api/openapi.json">openapi.json</a>.</p>
${operations.join("\n")}
<h2>What goes over the wire</h2>
${schemas.join("\n")}
</main></body></html>
`;
}

function article(method: string, path: string, operation: Operation): string {
  const parameters = (operation.parameters ?? []).map(
    (one) =>
      `<dt><code>${plain(one.name)}</code> (${plain(one.in)}${one.required === true ? "" : ", may be left out"})</dt>
<dd>${plain(one.description ?? one.schema?.description ?? "")}</dd>`,
  );
  const body = operation.requestBody?.content;
  const responses = Object.entries(operation.responses ?? {}).map(
    ([status, { description = "", content }]) =>
      `<dt>${plain(status)}</dt><dd>${plain(description)}${contentLine(content)}</dd>`,
  );
  return `<article><h2><code>${method.toUpperCase()} ${plain(path)}</code></h2>
<p>${plain([operation.summary, operation.description].filter(Boolean).join(". "))}</p>
<dl>${parameters.join("")}${body === undefined ? "" : `<dt>Body</dt><dd>${contentLine(body)}</dd>`}${responses.join("")}</dl></article>`;
}

function contentLine(content: Readonly<Record<string, { readonly schema?: unknown }>> | undefined): string {
  return Object.entries(content ?? {})
    .map(([type, { schema }]) => {
      const name = /"#\/components\/schemas\/(\w+)"/.exec(JSON.stringify(schema) ?? "")?.[1];
      const link = name === undefined ? "" : `: <a href="#${plain(name)}">${plain(name)}</a>`;
      return ` <code>${plain(type)}</code>${link}`;
    })
    .join(",");
}
