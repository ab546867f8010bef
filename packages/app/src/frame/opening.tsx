/** Nothing to show yet: for a moment only. */
export function Opening() {
  return (
    <div className="frame">
      <main className="page" aria-busy="true">
        <p className="out-of-sight" role="status">
          Opening what is kept here
        </p>
      </main>
    </div>
  );
}
