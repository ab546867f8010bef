interface IndexListProps {
  readonly groups: readonly {
    readonly subject: string;
    readonly items: readonly {
      readonly id: string;
      readonly title: string;
      readonly address: string;
      readonly note?: string | undefined;
    }[];
  }[];
  readonly here: string | undefined;
  readonly looked: string;
  readonly onLooked: (text: string) => void;
  /** What one may look for, as examples. */
  readonly examples: string;
  /** How many there are, in words. */
  readonly counted: (count: number) => string;
}

/** Pages by their subject, with a search. */
export function IndexList({ groups, here, looked, onLooked, examples, counted }: IndexListProps) {
  const count = groups.reduce((sum, { items }) => sum + items.length, 0);
  return (
    <div className="calc-index">
      <search className="calc-search">
        <label className="field">
          <span>Look for</span>
          <input
            type="search"
            value={looked}
            placeholder={examples}
            onChange={({ target }) => onLooked(target.value)}
          />
        </label>
        <p role="status">{looked.trim() === "" ? counted(count) : `${counted(count)} found`}</p>
      </search>
      {groups.map(({ subject, items }) => (
        <section key={subject} className="calc-subject">
          <h2>{subject}</h2>
          <ul>
            {items.map(({ id, title, address, note }) => (
              <li key={id}>
                <a href={address} aria-current={id === here ? "page" : undefined}>
                  <span>{title}</span>
                  {note === undefined ? null : <small>{note}</small>}
                </a>
              </li>
            ))}
          </ul>
        </section>
      ))}
      {count === 0 ? <p className="calc-none">Nothing of that name. Try one word, or part of one.</p> : null}
    </div>
  );
}
