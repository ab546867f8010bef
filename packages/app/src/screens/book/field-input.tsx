import type { BookField, BookPath, Plain } from "@witnessmark/book";
import { idOf, labelFrom, nameEdits, renameEdits, SECTIONS, spaced, valueAt } from "@witnessmark/book";
import { useEffect, useId, useState } from "react";
import { go } from "../../routes/use-route.ts";
import { capital } from "../../words/capital.ts";
import { readFigure } from "../../words/figures.ts";
import { companionEdits } from "./companion-edits.ts";
import { LimitInput } from "./limit-input.tsx";
import { PlaceInput } from "./place-input.tsx";
import { SpanInput } from "./span-input.tsx";
import { useDesk } from "./use-desk.ts";
import { unitsOfField, withUnit } from "./with-unit.ts";

interface FieldInputProps {
  readonly field: BookField;
  readonly path: BookPath;
  readonly value: Plain | undefined;
  readonly id: string;
  readonly describedBy: string | undefined;
}

/** What can be typed or chosen for one value of a book; it is put into the draft when it is left. */
export function FieldInput(props: FieldInputProps) {
  const { field, path, value } = props;
  const desk = useDesk();
  const set = (to: Plain | undefined) => {
    if (to !== undefined) desk.edit([{ set: path, to }, ...companionEdits(desk.plain, path, to)]);
    else if (value !== undefined) desk.edit([{ remove: path }]);
  };
  const common = { ...props, set };
  switch (field.is) {
    case "id":
      return (
        <TextInput
          {...common}
          set={(to) => rename(desk, path, plainText(to))}
          toText={plainText}
          read={(text) => text}
        />
      );
    case "line":
    case "date":
      return (
        <TextInput
          {...common}
          {...(field.key === "name" ? { set: (to) => nameAnew(desk, path, plainText(to)) } : {})}
          {...(field.key === "label" ? { instead: labelFrom(nameBeside(desk.plain, path)) } : {})}
          toText={plainText}
          read={(text) => (text === "" && field.optional ? undefined : text)}
        />
      );
    case "measure":
    case "gauge-measure": {
      const input = (
        <TextInput
          {...common}
          toText={plainText}
          read={(text) =>
            text === "" && field.optional
              ? undefined
              : withUnit(text, value, unitsOfField(field, desk.plain, path))
          }
        />
      );
      return field.is === "measure" && field.none === true ? (
        <LimitInput label={field.label} value={value} set={set}>
          {input}
        </LimitInput>
      ) : (
        input
      );
    }
    case "number":
      return (
        <TextInput
          {...common}
          toText={plainText}
          read={(text) => {
            if (text === "" && field.optional) return undefined;
            const typed = readFigure(text, "1");
            return typed.ok && typed.unit === undefined ? typed.value : text;
          }}
        />
      );
    case "lines":
      return (
        <TextInput
          {...common}
          toText={(list) => (Array.isArray(list) ? list.map(String).join("\n") : plainText(list))}
          read={(text) => readLines(text, field.optional === true)}
        />
      );
    case "switch":
      return (
        <Choice
          {...common}
          options={[true, false]}
          nameOf={(option) => (option === true ? "Yes" : "No")}
          chosen={(option) => value === option}
          onPick={(option) => set(value === option && field.optional ? undefined : option)}
        />
      );
    case "choice":
      return (
        <Choice
          {...common}
          options={field.of}
          nameOf={(option) => capital(spaced(option))}
          chosen={(option) => value === option}
          onPick={(option) => set(value === option && field.optional ? undefined : option)}
        />
      );
    case "choices": {
      const list: readonly Plain[] = Array.isArray(value) ? value : [];
      return (
        <Choice
          {...common}
          options={field.of}
          nameOf={(option) => capital(spaced(option))}
          chosen={(option) => list.includes(option)}
          onPick={(option) => {
            const next = list.includes(option)
              ? list.filter((each) => each !== option)
              : field.of.filter((each) => each === option || list.includes(each));
            set(next.length === 0 && field.optional ? undefined : next);
          }}
        />
      );
    }
    case "one-of":
      return <OneOf {...common} list={field.list} />;
    case "some-of":
      return <SomeOf {...common} list={field.list} />;
    case "at":
      return <SomeOf {...common} list={["points"]} single />;
    case "place":
      return (
        <PlaceInput
          path={path}
          value={value}
          ways={field.ways}
          label={field.label}
          optional={field.optional === true}
        />
      );
    case "gauge-span":
      return (
        <SpanInput
          path={path}
          value={value}
          label={field.label}
          optional={field.optional === true}
          note={field.note}
        />
      );
    default:
      return null;
  }
}

/** A name, and with it the short name that was made from the one before; the page of the item goes with it. */
function nameAnew(desk: ReturnType<typeof useDesk>, path: BookPath, to: string): void {
  const { plain, draft } = desk;
  if (plain === null || draft === null) return;
  const item = path.slice(0, -1);
  const { edits, id } = nameEdits(draft, plain, item, to);
  desk.edit(edits);
  if (id !== undefined && id !== valueAt(plain, [...item, "id"])) openItem(desk, item, id);
}

const nameBeside = (plain: Plain | null, path: BookPath): string =>
  plainText(valueAt(plain ?? undefined, [...path.slice(0, -1), "name"]));

function openItem({ registration }: ReturnType<typeof useDesk>, item: BookPath, id: string): void {
  const section = SECTIONS.find(({ path: list }) => list.join(".") === item.slice(0, -1).join("."));
  if (section?.one !== undefined) go({ at: "book", registration, page: section.id, item: id }, "replace");
}

/** Another short name, wherever it stands; the page of the item goes with it. */
function rename(desk: ReturnType<typeof useDesk>, path: BookPath, to: string): void {
  if (desk.plain === null) return;
  const item = path.slice(0, -1);
  desk.edit(renameEdits(desk.plain, item, to));
  openItem(desk, item, to);
}

export const plainText = (value: Plain | undefined): string =>
  value === undefined || value === null
    ? ""
    : typeof value === "object"
      ? JSON.stringify(value)
      : String(value);

/** A list of lines; figures among them stay figures. */
function readLines(text: string, optional: boolean): Plain | undefined {
  const lines = text
    .split(/\n|,(?=\s*[-\d])/)
    .map((each) => each.trim())
    .filter((each) => each !== "");
  if (lines.length === 0 && optional) return undefined;
  return lines.map((each) => (/^[-−]?\d+(\.\d+)?$/.test(each) ? Number(each.replace("−", "-")) : each));
}

interface InputProps extends FieldInputProps {
  readonly set: (to: Plain | undefined) => void;
}

interface TextInputProps extends InputProps {
  /** What stands there when nothing is typed. */
  readonly instead?: string;
  readonly toText: (value: Plain | undefined) => string;
  readonly read: (text: string) => Plain | undefined;
}

function TextInput({ field, value, id, describedBy, toText, read, set, instead }: TextInputProps) {
  const written = toText(value);
  const [typed, setTyped] = useState(written);
  useEffect(() => setTyped(written), [written]);
  const keep = () => {
    const text = field.is === "line" || field.is === "lines" ? typed : typed.trim();
    if (text !== written) set(read(text));
  };
  const several = field.is === "lines" || (field.is === "line" && field.long === true);
  const shared = {
    id,
    value: typed,
    onBlur: keep,
    "aria-describedby": describedBy,
    "aria-invalid": describedBy?.includes("fault") === true ? true : undefined,
    placeholder: instead ?? field.note,
  } as const;
  if (several) {
    return (
      <textarea
        {...shared}
        rows={field.is === "lines" ? 3 : 2}
        onChange={(event) => setTyped(event.target.value)}
      />
    );
  }
  return (
    <input
      {...shared}
      type={field.is === "date" ? "date" : "text"}
      autoComplete="off"
      autoCapitalize={field.is === "id" ? "none" : "sentences"}
      onChange={(event) => setTyped(event.target.value)}
      onKeyDown={(event) => event.key === "Enter" && keep()}
    />
  );
}

interface ChoiceProps<Option extends string | boolean> extends InputProps {
  readonly options: readonly Option[];
  readonly nameOf: (option: Option) => string;
  readonly chosen: (option: Option) => boolean;
  readonly onPick: (option: Option) => void;
}

function Choice<Option extends string | boolean>({
  field,
  options,
  nameOf,
  chosen,
  onPick,
  describedBy,
}: ChoiceProps<Option>) {
  return (
    <fieldset
      className="bk-pick"
      data-many={options.length > 4 ? "" : undefined}
      aria-describedby={describedBy}
    >
      <legend className="out-of-sight">{field.label}</legend>
      {options.map((option) => (
        <button
          key={String(option)}
          type="button"
          aria-pressed={chosen(option)}
          onClick={() => onPick(option)}
        >
          {nameOf(option)}
        </button>
      ))}
    </fieldset>
  );
}

interface Named {
  readonly id: string;
  readonly name: string;
}

/** The items that can be named, in the order of the book. */
export function useNamed(list: BookPath): readonly Named[] {
  const { plain } = useDesk();
  const items = valueAt(plain ?? undefined, list);
  if (!Array.isArray(items)) return [];
  return items.flatMap((item: Plain): Named[] => {
    const id = idOf(item);
    if (id === undefined) return [];
    const name = [valueAt(item, ["name"]), valueAt(item, ["title"])].find((each) => typeof each === "string");
    return [{ id, name: typeof name === "string" ? name : id }];
  });
}

function OneOf({ field, value, id, describedBy, set, list }: InputProps & { readonly list: BookPath }) {
  const named = useNamed(list);
  const known = named.some((each) => each.id === value);
  return (
    <select
      id={id}
      value={plainText(value)}
      aria-describedby={describedBy}
      onChange={(event) =>
        set(event.target.value === "" ? (field.optional ? undefined : "") : event.target.value)
      }
    >
      <option value="">{field.optional ? "None" : "Choose one"}</option>
      {known || value === undefined || value === "" ? null : (
        <option value={plainText(value)}>{plainText(value)}</option>
      )}
      {named.map((each) => (
        <option key={each.id} value={each.id}>
          {each.name}
        </option>
      ))}
    </select>
  );
}

function SomeOf({
  field,
  value,
  id,
  describedBy,
  set,
  list,
  single = false,
}: InputProps & { readonly list: BookPath; readonly single?: boolean }) {
  const named = useNamed(list);
  const more = useId();
  const chosen: readonly Plain[] = Array.isArray(value)
    ? value
    : value === undefined || value === ""
      ? []
      : [value];
  const put = (next: readonly Plain[]) => {
    const [only] = next;
    if (next.length === 0 && field.optional) set(undefined);
    else
      set(single && next.length === 1 && only !== undefined ? only : single && next.length === 0 ? "" : next);
  };
  return (
    <div className="bk-some">
      {chosen.map((each) => (
        <button
          key={plainText(each)}
          type="button"
          className="bk-chip"
          onClick={() => put(chosen.filter((other) => other !== each))}
        >
          {named.find(({ id: one }) => one === each)?.name ?? plainText(each)}
          <span className="out-of-sight">, take out of {field.label.toLowerCase()}</span>
          <span aria-hidden="true">×</span>
        </button>
      ))}
      <label className="out-of-sight" htmlFor={chosen.length === 0 ? id : more}>
        Add to {field.label.toLowerCase()}
      </label>
      <select
        id={chosen.length === 0 ? id : more}
        value=""
        aria-describedby={describedBy}
        onChange={(event) => event.target.value !== "" && put([...chosen, event.target.value])}
      >
        <option value="">{chosen.length === 0 ? "Choose" : "Add"}</option>
        {named
          .filter((each) => !chosen.includes(each.id))
          .map((each) => (
            <option key={each.id} value={each.id}>
              {each.name}
            </option>
          ))}
      </select>
    </div>
  );
}
