using System.Net;
using System.Text;
using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Files;

namespace PlatformForge.Exports.Reports.Forms;

/// <summary>Drawings and pictures by the paths they have as files, whether they are written as such or not.</summary>
/// <param name="files">SVG and PNG, in the order in which they are read.</param>
/// <param name="isWritten">Whether a path is written as a file too.</param>
internal sealed class ReportImages(IReadOnlyList<OutputFile> files, Func<string, bool> isWritten)
{
    // Bytes; title and description stand in the first few hundred.
    private const int Beginning = 1 << 14;

    private readonly HashSet<string> shown = new(StringComparer.Ordinal);

    /// <summary>A figure; null where there is no such image.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="title">What it shows.</param>
    /// <param name="basis">Where it comes from.</param>
    /// <param name="description">The same for those who cannot see it; what the drawing itself says where null.</param>
    public FigureBlock? Figure(string path, string title, string basis, string? description = null)
    {
        if (files.FirstOrDefault(f => f.Path == path) is not { } file)
        {
            return null;
        }

        shown.Add(path);
        return new(title, description ?? Said(file, "desc") ?? title, basis, file.Contents) { File = isWritten(path) ? path : null };
    }

    /// <summary>Those that no chapter has shown.</summary>
    public IEnumerable<FigureBlock> Others(string basis)
    {
        foreach (var file in files.Where(f => !shown.Contains(f.Path)).ToArray())
        {
            if (Figure(file.Path, Said(file, "title") ?? file.Path, basis) is { } figure)
            {
                yield return figure;
            }
        }
    }

    // What an SVG of ours says of itself, at its beginning.
    private static string? Said(OutputFile file, string element)
    {
        var beginning = new byte[Beginning];
        using var stream = file.Contents.Open();
        var svg = beginning.AsSpan(0, stream.ReadAtLeast(beginning, beginning.Length, throwOnEndOfStream: false));
        byte[] open = Encoding.ASCII.GetBytes($"<{element}>"), close = Encoding.ASCII.GetBytes($"</{element}>");
        int from = svg.IndexOf(open), to = svg.IndexOf(close);
        return from < 0 || to < from + open.Length + 1 ? null : WebUtility.HtmlDecode(Encoding.UTF8.GetString(svg[(from + open.Length)..to]));
    }
}
