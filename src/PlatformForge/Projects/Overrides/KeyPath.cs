using System.Globalization;
using PlatformForge.Projects.Reading;

namespace PlatformForge.Projects.Overrides;

/// <summary>Takes a written key such as <c>platform[0].ramps.end.length</c> to pieces.</summary>
internal static class KeyPath
{
    /// <summary>The names and numbers in order, numbers in digits; null when the key is not well formed.</summary>
    public static IReadOnlyList<string>? Split(string key)
    {
        var names = new List<string>();
        foreach (string part in key.Split('.'))
        {
            int bracket = part.IndexOf('[', StringComparison.Ordinal);
            names.Add((bracket < 0 ? part : part[..bracket]).Trim());
            while (bracket >= 0)
            {
                int end = part.IndexOf(']', bracket);
                string digits = end < 0 ? "" : part[(bracket + 1)..end];
                if (digits.Length is 0 or > 6 || !digits.All(char.IsAsciiDigit))
                {
                    return null;
                }

                names.Add(digits);
                bracket = end + 1 < part.Length ? part[end + 1] == '[' ? end + 1 : -2 : -1;
            }

            if (bracket == -2)
            {
                return null;
            }
        }

        return names.Exists(n => n.Length == 0) ? null : names;
    }

    /// <summary>Index of an entry of a list by number or by name; negative when there is none.</summary>
    public static int IndexIn(TreeList list, string name)
    {
        if (name.All(char.IsAsciiDigit) && int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out int index))
        {
            return index < list.Items.Count ? index : -1;
        }

        for (int i = 0; i < list.Items.Count; i++)
        {
            if (list.Items[i] is TreeTable table && table.TextOf("name") is { } own && string.Equals(Plain(own), Plain(name), StringComparison.Ordinal))
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>What a list holds, for a remedy.</summary>
    public static string EntriesOf(TreeList list) =>
        list.Items.Count == 0 ? "none" : string.Join(", ",
            list.Items.Select((item, i) => (item as TreeTable)?.TextOf("name") is { } name ? Plain(name) : i.ToString(CultureInfo.InvariantCulture)));

    private static string Plain(string name) => name.Trim().Replace(' ', '-').Replace('_', '-').ToLowerInvariant();
}
