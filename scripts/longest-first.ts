import { BaseSequencer } from "vitest/node";

/**
 * The order in which a runner takes up the files of tests: those that take longest first, as they were measured, so that
 * none of them is still at work when everything else is done. The rest follow as the runner would have them.
 *
 * @param names ends of their paths, the longest first
 */
export const longestFirst = (names: readonly string[]) =>
  class LongestFirst extends BaseSequencer {
    override async sort(files: Parameters<BaseSequencer["sort"]>[0]) {
      const rank = (file: (typeof files)[number]) => {
        const at = names.findIndex((name) => file.moduleId.endsWith(`/${name}`));
        return at < 0 ? names.length : at;
      };
      return (await super.sort(files)).toSorted((a, b) => rank(a) - rank(b));
    }
  };
