using System.Net;
using System.Text;
using PlatformForge.Exports.Documents;

namespace PlatformForge.Exports.Reports;

/// <summary>Drawings and pictures by the paths they have as files, whether they are written as such or not.</summary>
/// <param name="files">SVG and PNG, in the order in which they are read.</param>
/// <param name="isWritten">Whether a path is written as a file too.</param>
internal sealed class ReportImages(IReadOnlyList<OutputFile> files, Func<string, bool> isWritten)
{
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
        return new(title, description ?? Said(file.Bytes, "desc") ?? title, basis, file.Bytes) { File = isWritten(path) ? path : null };
    }

    /// <summary>Those that no chapter has shown.</summary>
    public IEnumerable<FigureBlock> Others(string basis)
    {
        foreach (var file in files.Where(f => !shown.Contains(f.Path)).ToArray())
        {
            if (Figure(file.Path, Said(file.Bytes, "title") ?? file.Path, basis) is { } figure)
            {
                yield return figure;
            }
        }
    }

    // What an SVG of ours says of itself.
    private static string? Said(byte[] svg, string element)
    {
        byte[] open = Encoding.ASCII.GetBytes($"<{element}>"), close = Encoding.ASCII.GetBytes($"</{element}>");
        int from = svg.AsSpan().IndexOf(open), to = svg.AsSpan().IndexOf(close);
        return from < 0 || to < from + open.Length + 1 ? null : WebUtility.HtmlDecode(Encoding.UTF8.GetString(svg.AsSpan(from + open.Length,
            to - from - open.Length)));
    }
}
