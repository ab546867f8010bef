import {
  type BookField,
  type BookPath,
  idOf,
  itemName,
  NONE_GIVEN,
  type Plain,
  spaced,
  valueAt,
} from "@witnessmark/book";
import { useId } from "react";
import { cm } from "../../drawing/centimetre.ts";
import { article } from "../../words/article.ts";
import { capital } from "../../words/capital.ts";
import { tally } from "../../words/figures.ts";
import { FieldFault, useFaultAt } from "./field-fault.tsx";
import { FieldInput, plainText, useNamed } from "./field-input.tsx";
import { KindsField } from "./kinds-field.tsx";
import { TableGrid } from "./table-grid.tsx";
import { useDesk } from "./use-desk.ts";

interface FieldsProps {
  readonly fields: readonly BookField[];
  readonly path: BookPath;
}

/** The fields of one thing of the book: to read, or in a draft to change. */
export function Fields({ fields, path }: FieldsProps) {
  const { draft, plain } = useDesk();
  const isRead = draft === null;
  const at = (way: BookPath) => valueAt(plain ?? undefined, [...path, ...way]);
  return (
    <div className="bk-fields">
      {fields
        .filter(({ key, unless }) => {
          if (key !== "" && isRead && at([key]) === undefined) return false;
          return unless === undefined || at([key]) !== undefined || at(unless.at) !== unless.is;
        })
        .map((field) => (
          <FieldRow key={field.key} field={field} path={field.key === "" ? path : [...path, field.key]} />
        ))}
    </div>
  );
}

function FieldRow({ field, path }: { readonly field: BookField; readonly path: BookPath }) {
  const desk = useDesk();
  const id = useId();
  const value = valueAt(desk.plain ?? undefined, path);
  const told = useFaultAt(path, value, true);
  const isRead = desk.draft === null;
  if (field.is === "part") return <Part field={field} path={path} value={value} />;
  if (field.is === "rows") return <Rows field={field} path={path} value={value} />;
  if (field.is === "kinds")
    return (
      <KindsField field={field} path={path} value={value}>
        {(fields) => <Fields fields={fields} path={path} />}
      </KindsField>
    );
  if (field.is === "assumed") return value === true ? <Assumed path={path} /> : null;
  const about = told === undefined ? undefined : `${id}-${told.is === "wrong" ? "fault" : "need"}`;
  const isGroup = ["choice", "choices", "switch", "place", "gauge-span", "cells"].includes(field.is);
  return (
    <div className="bk-field">
      {isRead || isGroup ? (
        <span className="bk-label">{field.label}</span>
      ) : (
        <label htmlFor={id}>
          {field.label}
          {field.is === "number" && field.unit !== undefined ? `, ${field.unit}` : ""}
        </label>
      )}
      <div>
        {field.is === "cells" ? (
          <TableGrid path={path.slice(0, -1)} />
        ) : isRead ? (
          <FieldText field={field} value={value} />
        ) : (
          <FieldInput field={field} path={path} value={value} id={id} describedBy={about} />
        )}
        <FieldFault {...(about === undefined ? {} : { id: about })} told={told} />
      </div>
    </div>
  );
}

/** What holds common practice says so, until its own is put in or it is said to be right. */
function Assumed({ path }: { readonly path: BookPath }) {
  const desk = useDesk();
  return (
    <div className="bk-assumed">
      <p>Both are common practice. Put in your gauge’s own.</p>
      {desk.draft === null ? null : (
        <button type="button" className="button" onClick={() => desk.edit([{ remove: path }])}>
          These are its own
        </button>
      )}
    </div>
  );
}

/** What is told of a part, a list or a row as a whole. */
function FaultOfAll({ path, value }: { readonly path: BookPath; readonly value: Plain | undefined }) {
  return <FieldFault told={useFaultAt(path, value, false)} />;
}

function FieldText({ field, value }: { readonly field: BookField; readonly value: Plain | undefined }) {
  const list =
    field.is === "one-of" || field.is === "some-of" ? field.list : field.is === "at" ? ["points"] : [];
  const named = useNamed(list);
  const nameOf = (id: Plain | undefined) => named.find((each) => each.id === id)?.name ?? plainText(id);
  if (field.is === "place" && Array.isArray(value)) {
    return (
      <span className="bk-boxes">
        {field.ways.map((way, axis) => (
          <span className="bk-box" key={way}>
            <b>{plainText(value[axis])}</b>
            <small>m {way}</small>
          </span>
        ))}
      </span>
    );
  }
  if (field.is === "gauge-span" && Array.isArray(value)) return <p>{value.map(plainText).join(" to ")}</p>;
  if (field.is === "choice") return <p>{capital(spaced(plainText(value)))}</p>;
  if (field.is === "choices" && Array.isArray(value))
    return <p>{capital(value.map((each: Plain) => spaced(plainText(each))).join(", "))}</p>;
  if (field.is === "switch") return <p>{value === true ? "Yes" : "No"}</p>;
  if (value === NONE_GIVEN) return <p>The manual gives none</p>;
  if (Array.isArray(value)) return <p>{value.map(nameOf).join(", ") || "None"}</p>;
  const unit = field.is === "number" && field.unit !== undefined ? ` ${field.unit}` : "";
  return (
    <p>
      {list.length > 0 ? nameOf(value) : plainText(value)}
      {unit}
    </p>
  );
}

interface PartProps<Kind extends BookField["is"]> {
  readonly field: Extract<BookField, { readonly is: Kind }>;
  readonly path: BookPath;
  readonly value: Plain | undefined;
}

function Part({ field, path, value }: PartProps<"part">) {
  const desk = useDesk();
  if (value === undefined || value === null) {
    if (desk.draft === null) return null;
    return (
      <div className="bk-field">
        <span className="bk-label">{field.label}</span>
        <div>
          <button
            type="button"
            className="button"
            onClick={() => desk.edit([{ set: path, to: field.blank }])}
          >
            Add {field.label.toLowerCase()}
          </button>
          <FaultOfAll path={path} value={value} />
        </div>
      </div>
    );
  }
  return (
    <fieldset className="bk-part">
      <legend>{field.label}</legend>
      <FaultOfAll path={path} value={value} />
      <Fields fields={field.fields} path={path} />
      {desk.draft !== null && field.optional ? (
        <button type="button" className="quiet" onClick={() => desk.edit([{ remove: path }])}>
          Take {field.label.toLowerCase()} out
        </button>
      ) : null}
    </fieldset>
  );
}

function Rows({ field, path, value }: PartProps<"rows">) {
  const desk = useDesk();
  const rows: readonly Plain[] = Array.isArray(value) ? value : [];
  const isRead = desk.draft === null;
  const names = field.names?.(rows);
  if (isRead && rows.length === 0) return null;
  const add = () => {
    const [first] = field.fields;
    const isAlong = first?.is === "place" && first.ways[0] === "aft";
    const item = (isAlong ? furtherThan(rows.at(-1)) : undefined) ?? field.blank;
    desk.edit(value === undefined ? [{ set: path, to: [item] }] : [{ insert: [...path, rows.length], item }]);
  };
  const takeOut = (index: number) =>
    desk.edit([{ remove: rows.length === 1 && field.optional ? path : [...path, index] }]);
  return (
    <fieldset className="bk-part bk-rows">
      <legend>{field.label}</legend>
      <FaultOfAll path={path} value={value} />
      {isOneField(field.fields)
        ? rows.map((_, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: figures have no other identity than their place
            <div className="bk-row bk-row-one" key={index}>
              <div className="bk-row-head">
                <b>
                  {capital(field.one)} {index + 1}
                </b>
                {isRead ? null : (
                  <button type="button" className="quiet" onClick={() => takeOut(index)}>
                    Take out
                    <span className="out-of-sight">
                      {" "}
                      {field.one} {index + 1}
                    </span>
                  </button>
                )}
              </div>
              <Fields
                fields={field.fields.map((each) => ({
                  ...each,
                  label: `${capital(field.one)} ${index + 1}`,
                }))}
                path={[...path, index]}
              />
            </div>
          ))
        : rows.map((row, index) => (
            <fieldset
              className="bk-row"
              key={idOf(row) ?? index}
              data-short={isShort(field.fields) ? "" : undefined}
            >
              {names === undefined ? null : <legend>{names[index]}</legend>}
              <FaultOfAll path={[...path, index]} value={row} />
              <Fields fields={field.fields} path={[...path, index]} />
              {isRead ? null : (
                <button type="button" className="quiet" onClick={() => takeOut(index)}>
                  Take out
                  <span className="out-of-sight">
                    {" "}
                    {names?.[index] ?? itemName(row, null) ?? `${field.one} ${index + 1}`}
                  </span>
                </button>
              )}
            </fieldset>
          ))}
      {isRead ? null : (
        <button type="button" className="button" onClick={add}>
          Add {article(field.one)}
        </button>
      )}
      {isRead && rows.length > 6 ? <p className="note">{tally(rows.length, field.one)}</p> : null}
    </fieldset>
  );
}

/** A row that is a place and nothing else. */
const isOneField = ([field, ...more]: readonly BookField[]): boolean =>
  field?.key === "" && field.is === "place" && more.length === 0;

/** The next of a row of figures is like the last, a little further aft: a station, a corner. */
function furtherThan(last: Plain | undefined): Plain | undefined {
  const [x_m, ...rest]: readonly Plain[] = Array.isArray(last) ? last : [];
  return typeof x_m === "number" ? [cm(x_m + 0.2), ...rest] : undefined;
}

/** Two or three figures have room beside each other. */
const isShort = (fields: readonly BookField[]): boolean =>
  fields.length <= 3 &&
  fields.every(({ is }) => is === "measure" || is === "gauge-measure" || is === "number");
