using System.Globalization;
using System.Text;

namespace PlatformForge.Exports.Documents;

/// <summary>Puts a document together, from top to bottom.</summary>
internal sealed class DocumentBuilder
{
    private readonly List<Block> blocks = [];
    private readonly HashSet<string> anchors = new(StringComparer.Ordinal);

    private int deep = 1;

    public IReadOnlyList<Block> Blocks => blocks;

    /// <summary>A heading of a part, 2, or of a chapter, 3.</summary>
    public void Heading(int level, string text)
    {
        deep = level;
        Heading(level, text, divides: true);
    }

    /// <summary>The title of what follows.</summary>
    public void Title(string text) => Heading(deep + 1, text, divides: false);

    private void Heading(int level, string text, bool divides)
    {
        string plain = Slug(text), free = plain;
        for (int i = 2; !anchors.Add(free); i++)
        {
            free = plain + "-" + i.ToString(CultureInfo.InvariantCulture);
        }

        blocks.Add(new Heading(level, text) { Anchor = free, Divides = divides });
    }

    public void Say(string text) => blocks.Add(new Paragraph(text));

    public void List(IEnumerable<string> items, ListKind kind = ListKind.Plain)
    {
        string[] all = [.. items];
        if (all.Length > 0)
        {
            blocks.Add(new ItemList(all, kind));
        }
    }

    /// <summary>Files of the folder, where there are any.</summary>
    public void Files(IEnumerable<(string Path, string What)> files)
    {
        (string, string)[] all = [.. files];
        Add(all.Length > 0 ? new FileListBlock(all) : null);
    }

    /// <summary>A table under its title as a heading; nothing where it has no rows.</summary>
    public void Table(string title, IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<string>> rows, string basis, string? file = null)
    {
        IReadOnlyList<string>[] all = [.. rows];
        if (all.Length > 0)
        {
            // A column in which nothing is said says nothing.
            int[] told = [.. Enumerable.Range(0, headings.Count).Where(i => i == 0 || all.Any(r => r[i].Length > 0))];
            Title(title);
            blocks.Add(new TableBlock(title, [.. told.Select(i => headings[i])], [.. all.Select(r => (IReadOnlyList<string>)[.. told.Select(i => r[i])])],
                basis)
            { File = file });
        }
    }

    public void Add(Block? block)
    {
        if (block is not null)
        {
            blocks.Add(block);
        }
    }

    private static string Slug(string text)
    {
        var slug = new StringBuilder();
        foreach (char c in text)
        {
            if (char.IsAsciiLetterOrDigit(c))
            {
                slug.Append(char.ToLowerInvariant(c));
            }
            else if (slug.Length > 0 && slug[^1] != '-')
            {
                slug.Append('-');
            }
        }

        string plain = slug.ToString().Trim('-');
        return plain.Length == 0 ? "part" : plain;
    }
}
