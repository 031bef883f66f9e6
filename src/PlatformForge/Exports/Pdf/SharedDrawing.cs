using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;

namespace PlatformForge.Exports.Pdf;

/// <summary>
/// A drawing that goes into several files: drawn when the first of them asks, whichever thread asks, and let go of once every one of them has taken it.
/// Who asks later has it drawn anew.
/// </summary>
/// <param name="draw">Draws it.</param>
internal sealed class SharedDrawing(Func<Sheet> draw)
{
    private readonly Lock turn = new();
    private Lazy<Sheet>? drawn;
    private Lazy<PdfLeaf>? leaf;
    private int users;

    /// <summary>The drawing.</summary>
    public Sheet Value => Drawn.Value;

    /// <summary>The drawing as a page of a book, which takes little room and stays.</summary>
    public PdfLeaf Leaf
    {
        get
        {
            lock (turn)
            {
                leaf ??= new(() => PdfLeaf.Of(Value));
            }

            return leaf.Value;
        }
    }

    /// <summary>A file that is made of the drawing. Once as many files are made as there are, nothing of it stays but its page.</summary>
    /// <param name="path">The file's path.</param>
    /// <param name="write">Writes it.</param>
    public FileWork File(string path, Action<Stream, Sheet> write)
    {
        users++;
        return new(path, (Stream to) =>
        {
            write(to, Value);
            Used();
        });
    }

    /// <summary>The same for a file that is made in one.</summary>
    public FileWork File(string path, Func<Sheet, byte[]> make)
    {
        users++;
        return new(path, () =>
        {
            byte[] made = make(Value);
            Used();
            return made;
        });
    }

    private Lazy<Sheet> Drawn
    {
        get
        {
            lock (turn)
            {
                return drawn ??= new(draw);
            }
        }
    }

    // Whoever takes it last makes the page while it is there.
    private void Used()
    {
        if (Interlocked.Decrement(ref users) == 0)
        {
            _ = Leaf;
            lock (turn)
            {
                drawn = null;
            }
        }
    }
}
