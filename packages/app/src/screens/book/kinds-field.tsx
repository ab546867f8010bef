import { type BookField, type BookPath, type Plain, spaced, valueAt } from "@witnessmark/book";
import { type ReactNode, useId, useRef } from "react";
import { capital } from "../../words/capital.ts";
import { FieldFault, useFaultAt } from "./field-fault.tsx";
import { plainText } from "./field-input.tsx";
import { asKind, type KindsTyped, keyed, temperatureEdits } from "./kind-change.ts";
import { useDesk } from "./use-desk.ts";

interface KindsFieldProps {
  readonly field: Extract<BookField, { readonly is: "kinds" }>;
  readonly path: BookPath;
  readonly value: Plain | undefined;
  readonly children: (fields: readonly BookField[]) => ReactNode;
}

/** One of several kinds, what it is for, and the fields that it has. */
export function KindsField({ field, path, value, children }: KindsFieldProps) {
  const desk = useDesk();
  const id = useId();
  const typed = useRef<KindsTyped>(new Map());
  const told = useFaultAt(path, value, false);
  const kind = plainText(valueAt(value, [field.by]));
  const choose = (next: string) => {
    typed.current = new Map([...typed.current, [kind, keyed(value)]]);
    desk.edit([
      { set: path, to: asKind(field, value, typed.current, next) },
      ...temperatureEdits(desk.plain, path, next),
    ]);
  };
  const says = field.kinds[kind]?.says;
  return (
    <fieldset className="bk-part">
      <legend>{field.label}</legend>
      <div className="bk-field">
        {desk.draft === null ? <span className="bk-label">By</span> : <label htmlFor={id}>By</label>}
        <div>
          {desk.draft === null ? (
            <p>{capital(spaced(kind))}</p>
          ) : (
            <select
              id={id}
              value={kind}
              aria-describedby={says === undefined ? undefined : `${id}-says`}
              onChange={(event) => choose(event.target.value)}
            >
              {Object.keys(field.kinds).map((each) => (
                <option key={each} value={each}>
                  {capital(spaced(each))}
                </option>
              ))}
            </select>
          )}
          {says === undefined ? null : (
            <p className="bk-need" id={`${id}-says`}>
              {says}
            </p>
          )}
          <FieldFault told={told} />
        </div>
      </div>
      {children(field.kinds[kind]?.fields ?? [])}
    </fieldset>
  );
}
