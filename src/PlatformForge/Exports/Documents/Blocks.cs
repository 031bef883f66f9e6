using PlatformForge.Exports.Files;

namespace PlatformForge.Exports.Documents;

/// <summary>
/// A text for people, before it is written as anything: what every writer of this folder takes. A sentence stands in it once, whatever it is written as.
/// </summary>
/// <param name="Title">What it is about.</param>
/// <param name="Fields">What a title block says: a word and its figure.</param>
/// <param name="Blocks">The text from top to bottom; headings divide it.</param>
/// <param name="Foot">A last line.</param>
public sealed record Document(string Title, IReadOnlyList<(string Name, string Value)> Fields, IReadOnlyList<Block> Blocks, string Foot);

/// <summary>Something that stands in a document.</summary>
public abstract record Block;

/// <summary>A heading.</summary>
/// <param name="Level">2 for a part, 3 for a chapter, one more than what it stands in for the title of a table.</param>
/// <param name="Text">Its words.</param>
public sealed record Heading(int Level, string Text) : Block
{
    /// <summary>By what links find it: unique in its document.</summary>
    public string Anchor { get; init; } = "";

    /// <summary>Whether it divides the text; otherwise it is the title of one thing and stands in no list of contents.</summary>
    public bool Divides { get; init; } = true;
}

/// <summary>A paragraph.</summary>
public sealed record Paragraph(string Text) : Block;

/// <summary>The one line that everybody reads.</summary>
/// <param name="IsGood">Whether it says that all is well.</param>
/// <param name="Text">The line.</param>
public sealed record VerdictLineBlock(bool IsGood, string Text) : Block;

/// <summary>Lines of a list.</summary>
/// <param name="Items">The lines.</param>
/// <param name="Kind">What list it is.</param>
public sealed record ItemList(IReadOnlyList<string> Items, ListKind Kind = ListKind.Plain) : Block;

/// <summary>What a list is.</summary>
public enum ListKind
{
    /// <summary>In any order.</summary>
    Plain,

    /// <summary>Steps, one after another, that are ticked off.</summary>
    Steps,

    /// <summary>Cautions.</summary>
    Cautions,
}

/// <summary>Something that was found, with its code and the key it is about.</summary>
public sealed record Remark(string Word, string Code, string Key, string Text) : Block;

/// <summary>A table.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="Headings">One a column.</param>
/// <param name="Rows">Cells in the order of the headings.</param>
/// <param name="Basis">Where its figures come from.</param>
public sealed record TableBlock(string Title, IReadOnlyList<string> Headings, IReadOnlyList<IReadOnlyList<string>> Rows, string Basis) : Block
{
    /// <summary>Path of the file, in the same folder, that holds the whole of it; null where there is none.</summary>
    public string? File { get; init; }
}

/// <summary>Files in the same folder, each a way to it.</summary>
/// <param name="Files">Path, and what it is where that has to be said.</param>
public sealed record FileListBlock(IReadOnlyList<(string Path, string What)> Files) : Block;

/// <summary>A drawing or a picture.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="Description">The same in a sentence or two for those who cannot see it.</param>
/// <param name="Basis">Where it comes from.</param>
/// <param name="Image">SVG text in UTF-8, or PNG.</param>
public sealed record FigureBlock(string Title, string Description, string Basis, FileContents Image) : Block
{
    /// <summary>Path of its file in the same folder; null where there is none.</summary>
    public string? File { get; init; }
}
