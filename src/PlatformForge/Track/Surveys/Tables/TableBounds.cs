using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Tables;

/// <summary>Looks over a table before it is cut: one pass, nothing kept.</summary>
internal static class TableBounds
{
    /// <summary>What goes beyond a limit, what would be right, and the line; null when all are kept.</summary>
    public static (string Message, string Remedy, int Line)? Beyond(string text)
    {
        int line = 0, rows = 0;
        foreach (var row in text.AsSpan().EnumerateLines())
        {
            line++;
            if (row.Length > InputLimits.TableRowLetters)
            {
                return (Invariant($"The row has {row.Length} letters, over the limit of {InputLimits.TableRowLetters}."),
                    "Give each reading a row of its own.", line);
            }

            rows += row.IsWhiteSpace() ? 0 : 1;
            if (rows > InputLimits.TableRows + 1)
            {
                return (Invariant($"The table has more than {InputLimits.TableRows} rows."),
                    "Some hundred readings fix a track well: keep every tenth, or cut the line into several files.", line);
            }

            int columns = 1 + Math.Max(row.Count(';'), Math.Max(row.Count(','), row.Count('\t')));
            if (columns > InputLimits.TableColumns)
            {
                return (Invariant($"The row has {columns} columns, over the limit of {InputLimits.TableColumns}."),
                    "Keep the columns of the readings, and give each reading a row of its own.", line);
            }
        }

        return null;
    }
}
