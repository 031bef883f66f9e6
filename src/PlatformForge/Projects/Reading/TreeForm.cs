using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace PlatformForge.Projects.Reading;

/// <summary>
/// The plain form of a tree: keys in order of name, no comments, no places. Two files that mean the same have the same
/// form, so its hash tells whether anything was changed.
/// </summary>
internal static class TreeForm
{
    /// <summary>SHA-256 of the form and of the files it names, 64 hexadecimal digits.</summary>
    public static string Hash(TreeTable tree, IEnumerable<string> files)
    {
        var text = new StringBuilder();
        Write(text, tree);
        foreach (string file in files)
        {
            Text(text, file);
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }

    private static void Write(StringBuilder text, TreeNode node)
    {
        switch (node)
        {
            case TreeTable table:
                text.Append('{');
                foreach (var entry in table.Entries.OrderBy(e => e.Name, StringComparer.Ordinal))
                {
                    Text(text, entry.Name);
                    Write(text, entry.Value);
                }

                text.Append('}');
                break;
            case TreeList list:
                text.Append('[');
                foreach (var item in list.Items)
                {
                    Write(text, item);
                }

                text.Append(']');
                break;
            case TreeNumber number:
                text.Append(number.Value.ToString("R", CultureInfo.InvariantCulture)).Append(';');
                break;
            case TreeText words:
                Text(text, words.Value);
                break;
            default:
                text.Append(node.Kind).Append(';');
                break;
        }
    }

    private static void Text(StringBuilder text, string words) => text.Append(CultureInfo.InvariantCulture, $"{words.Length}:").Append(words);
}
