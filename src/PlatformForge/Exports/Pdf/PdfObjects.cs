using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using static System.FormattableString;

namespace PlatformForge.Exports.Pdf;

/// <summary>
/// The objects of a PDF file (ISO 32000-1, 7.5) as they are written one after another, and the table of where they lie. No clock and no chance: what
/// identifies the file is a hash of what is in it.
/// </summary>
internal sealed class PdfObjects
{
    private readonly Stream file;
    private readonly List<long> places = [];

    /// <param name="file">Where it is written; it has to be one that can be read and sought.</param>
    public PdfObjects(Stream file)
    {
        this.file = file;

        // The second line tells those who carry files that this one is not text.
        Write("%PDF-1.6\n%\u00E2\u00E3\u00CF\u00D3\n");
    }

    /// <summary>A number for an object that is written later.</summary>
    public int Reserve()
    {
        places.Add(0);
        return places.Count;
    }

    public int Add(string body)
    {
        int number = Reserve();
        Put(number, body);
        return number;
    }

    public void Put(int number, string body)
    {
        Begin(number);
        Write(body);
        Write("\nendobj\n");
    }

    /// <summary>A stream, packed; <paramref name="entries"/> are those of its dictionary beside length and filter.</summary>
    public int AddStream(string entries, Action<Stream> write) => AddStream(entries, Packed(write));

    /// <summary>A stream that is packed already.</summary>
    public int AddStream(string entries, byte[] packed)
    {
        int number = Reserve();
        Begin(number);
        Write(Invariant($"<< {entries}/Filter /FlateDecode /Length {packed.Length} >>\nstream\n"));
        file.Write(packed);
        Write("\nendstream\nendobj\n");
        return number;
    }

    /// <summary>What is written, packed.</summary>
    public static byte[] Packed(Action<Stream> write)
    {
        using MemoryStream plain = new(), packed = new();
        write(plain);
        using (var deflate = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            plain.WriteTo(deflate); // in one, since what comes of it hangs on the pieces it comes in
        }

        return packed.ToArray();
    }

    /// <summary>Ends the file.</summary>
    public void End(int catalog, int info)
    {
        file.Position = 0;
        string id = Convert.ToHexString(SHA256.HashData(file).AsSpan(0, 16));
        file.Position = file.Length;
        long start = file.Position;
        Write(Invariant($"xref\n0 {places.Count + 1}\n0000000000 65535 f \n"));
        foreach (long place in places)
        {
            Write(place.ToString("D10", CultureInfo.InvariantCulture) + " 00000 n \n");
        }

        Write(Invariant($"trailer\n<< /Size {places.Count + 1} /Root {catalog} 0 R /Info {info} 0 R /ID [<{id}> <{id}>] >>\nstartxref\n{start}\n%%EOF\n"));
    }

    /// <summary>A text for outlines, labels and titles, in any script.</summary>
    public static string Text(string text) => "<FEFF" + Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(text)) + ">";

    private void Begin(int number)
    {
        places[number - 1] = file.Position;
        Write(Invariant($"{number} 0 obj\n"));
    }

    private void Write(string text) => file.Write(Encoding.Latin1.GetBytes(text));
}
