using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Projects.Remedies;

/// <summary>A project's text, so that it can be read again with changes.</summary>
/// <param name="Text">The text.</param>
/// <param name="File">Its name for findings.</param>
/// <param name="Folder">Where files that it names are looked for; null refuses such names.</param>
/// <param name="Overrides">Values that stand in for those of the text.</param>
public sealed record ProjectSource(string Text, string File, string? Folder = null, IReadOnlyList<Override>? Overrides = null)
{
    /// <summary>The text of a file; null when it can't be read.</summary>
    public static ProjectSource? OfFile(string path, IReadOnlyList<Override>? overrides = null) =>
        ProjectText.Read(path, path).Value is { } text ? new(text, path, Path.GetDirectoryName(Path.GetFullPath(path))!, overrides) : null;

    /// <summary>The project with cures taken.</summary>
    public Outcome<ProjectSpec> Read(IReadOnlyList<Cure> cures) => ProjectReader.Read(Text, File, Folder, Overrides, cures);

    internal TreeTable? Tree() => ProjectReader.Tree(Text, File, Folder, Overrides);
}
