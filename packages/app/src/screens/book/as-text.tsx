import { plainOf, rewriteDraft } from "@witnessmark/book";
import { useEffect, useRef, useState } from "react";
import { useDesk } from "./use-desk.ts";

const REST_ms = 600;

/** The book as its text, edited in place; every fault with its line and column, and the way there. */
export function AsText() {
  const desk = useDesk();
  const { text, draft, faults, isRead } = desk;
  const area = useRef<HTMLTextAreaElement>(null);
  const [typed, setTyped] = useState(text);
  const last = useRef(text);
  useEffect(() => {
    if (text !== last.current) setTyped(text);
    last.current = text;
  }, [text]);
  const { change } = desk;
  const keep = (now: string) => {
    if (now === last.current) return;
    last.current = now;
    change((before) => rewriteDraft(before, now));
  };
  const typing = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const latest = useRef({ typed, keep });
  latest.current = { typed, keep };
  // what was typed is kept also when the page is left before it rests
  useEffect(
    () => () => {
      clearTimeout(typing.current);
      latest.current.keep(latest.current.typed);
    },
    [],
  );
  const type = (now: string) => {
    setTyped(now);
    clearTimeout(typing.current);
    typing.current = setTimeout(() => keep(now), REST_ms);
  };
  const unread = plainOfTyped(typed);
  const shown = unread === undefined ? faults : [unread];
  const goTo = (line: number, column: number) => {
    const field = area.current;
    if (field === null) return;
    const lines = typed.split("\n");
    const at = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0) + column - 1;
    field.focus();
    field.setSelectionRange(at, at);
    const lineHigh_px = field.scrollHeight / lines.length;
    field.scrollTop = Math.max(0, (line - 4) * lineHigh_px);
  };
  return (
    <article className="bk-text">
      <header className="bk-head">
        <h2>As text</h2>
      </header>
      <p className="note" role="status">
        {shown.length === 0
          ? isRead
            ? "No faults."
            : "Being read."
          : `${shown.length === 1 ? "One fault" : `${shown.length} faults`}:`}
      </p>
      {shown.length === 0 ? null : (
        <ol className="bk-text-faults">
          {shown.slice(0, 20).map((fault) => (
            <li key={`${fault.line}:${fault.column}:${fault.path}:${fault.expected}`}>
              <button type="button" className="button" onClick={() => goTo(fault.line, fault.column)}>
                Line {fault.line}, column {fault.column}
              </button>
              <span>
                {fault.path === "" ? null : <code>{fault.path} </code>}
                Expected {fault.expected}; found {fault.found}
                {fault.remedy === undefined ? "" : `: ${fault.remedy}`}.
              </span>
            </li>
          ))}
        </ol>
      )}
      <textarea
        ref={area}
        aria-label="The book as text"
        className="bk-yaml"
        value={typed}
        readOnly={draft === null}
        spellCheck={false}
        wrap="off"
        onChange={(event) => type(event.target.value)}
        onBlur={() => {
          clearTimeout(typing.current);
          keep(typed);
        }}
      />
    </article>
  );
}

/** Why a text cannot be read at all, as long as it cannot. */
function plainOfTyped(text: string) {
  const read = plainOf(text, "the draft");
  return read.ok ? undefined : read.fault;
}
