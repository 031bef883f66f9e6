using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Projects.Remedies;

/// <summary>A project's text, taken apart once, so that it can be read again with changes.</summary>
/// <param name="text">The text.</param>
/// <param name="file">Its name for findings.</param>
/// <param name="folder">Where files that it names are looked for; null refuses such names.</param>
/// <param name="overrides">Values that stand in for those of the text.</param>
public sealed class ProjectSource(string text, string file, string? folder = null, IReadOnlyList<Override>? overrides = null)
{
    private readonly Lazy<Outcome<TreeTable>> parts = new(() => TreeReader.Read(text, file));

    /// <summary>The text of a file; null when it can't be read.</summary>
    public static ProjectSource? OfFile(string path, IReadOnlyList<Override>? overrides = null) =>
        ProjectText.Read(path, path).Value is { } text ? new(text, path, Path.GetDirectoryName(Path.GetFullPath(path))!, overrides) : null;

    /// <summary>The project with cures taken.</summary>
    public Outcome<ProjectSpec> Read(IReadOnlyList<Cure> cures) => ProjectReader.Read(parts.Value, file, folder, overrides, cures);

    internal TreeTable? Tree() => parts.Value.Value is { } tree ? ProjectReader.Tree(tree, folder, overrides) : null;
}
