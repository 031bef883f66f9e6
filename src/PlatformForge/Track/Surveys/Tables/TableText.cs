namespace PlatformForge.Track.Surveys.Tables;

/// <summary>
/// A CSV file cut into rows and fields. Own code rather than a package, since the rows have to be numbered as the user's editor
/// does, comments and blank lines dropped, and every doubt told by row and column.
/// </summary>
/// <param name="Delimiter">Semicolon, tab or comma, whichever the header uses, in this order.</param>
/// <param name="Headers">The fields of the first row.</param>
/// <param name="HeaderRow">Line of the header.</param>
/// <param name="Rows">All further rows.</param>
internal sealed record TableText(char Delimiter, string[] Headers, int HeaderRow, IReadOnlyList<TableRow> Rows)
{
    /// <summary>Cuts a text; null when it holds no row at all.</summary>
    public static TableText? Cut(string text)
    {
        char delimiter = '\0';
        string[] headers = [];
        int headerRow = 0, row = 0;
        var rows = new List<TableRow>();
        foreach (var raw in text.AsSpan().TrimStart('\uFEFF').EnumerateLines())
        {
            row++;
            var line = raw.Trim(' ');
            if (line.IsWhiteSpace() || line.TrimStart()[0] == '#')
            {
                continue;
            }

            if (headerRow == 0)
            {
                delimiter = line.Contains(';') ? ';' : line.Contains('\t') ? '\t' : ',';
                (headers, headerRow) = (Fields(line, delimiter), row);
            }
            else
            {
                rows.Add(new(row, Fields(line, delimiter)));
            }
        }

        return headerRow == 0 ? null : new(delimiter, headers, headerRow, rows);
    }

    // A field in double quotes may hold the delimiter; a doubled quote inside stands for one.
    private static string[] Fields(ReadOnlySpan<char> line, char delimiter)
    {
        if (!line.Contains('"'))
        {
            return Plain(line, delimiter);
        }

        var fields = new List<string>();
        var field = new System.Text.StringBuilder();
        bool quoted = false;
        for (int i = 0; i < line.Length; i++)
        {
            if (line[i] == '"' && quoted && i + 1 < line.Length && line[i + 1] == '"')
            {
                field.Append(line[i++]);
            }
            else if (line[i] == '"')
            {
                quoted = !quoted;
            }
            else if (line[i] == delimiter && !quoted)
            {
                fields.Add(field.ToString().Trim());
                field.Clear();
            }
            else
            {
                field.Append(line[i]);
            }
        }

        fields.Add(field.ToString().Trim());
        return [.. fields];
    }

    private static string[] Plain(ReadOnlySpan<char> line, char delimiter)
    {
        var parts = new string[line.Count(delimiter) + 1];
        int at = 0;
        foreach (var part in line.Split(delimiter))
        {
            parts[at++] = line[part].Trim().ToString();
        }

        return parts;
    }
}

/// <summary>One row of a table: its line in the file and its fields.</summary>
internal sealed record TableRow(int Line, string[] Fields);
