export { readingsCsv } from "./readings-csv.ts";
export { timedCalendar } from "./timed-calendar.ts";
export { timedCsv } from "./timed-csv.ts";
