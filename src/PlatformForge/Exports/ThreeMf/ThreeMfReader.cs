using System.IO.Compression;
using System.Text;
using System.Xml;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.ThreeMf;

/// <summary>
/// Reads a 3MF package: core specification, base materials, groups. What breaks a rule of the core specification is a fault;
/// whether the meshes are closed is asked elsewhere.
/// </summary>
public static class ThreeMfReader
{
    private const long LargestPicture = 20 << 20;

    private static readonly XmlReaderSettings Settings = new()
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        IgnoreComments = true,
        IgnoreProcessingInstructions = true,
        IgnoreWhitespace = true,
        MaxCharactersInDocument = InputLimits.ModelBytes,
        CloseInput = false,
    };

    /// <summary>Reads a whole package.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="name">What to call it in findings.</param>
    /// <returns>PF7201 no readable archive, PF7202 a broken package, PF7203 a broken model part.</returns>
    public static Outcome<ThreeMfModel> Read(byte[] bytes, string name)
    {
        if (bytes.Length > InputLimits.PackageBytes)
        {
            return Fault("PF7201", name, Invariant($"it has {bytes.Length} bytes, over the limit of {InputLimits.PackageBytes}"));
        }

        // The readers below stop at the first fault by an exception, as the framework's own do: there is no way on from it.
        try
        {
            using var archive = new ZipArchive(new MemoryStream(bytes, writable: false), ZipArchiveMode.Read);
            return Outcome.Of(ReadPackage(archive));
        }
        catch (GuardedStreamException fault)
        {
            return Fault("PF7201", name, fault.Message);
        }
        catch (ThreeMfFault fault)
        {
            return Fault(fault.Code, name, fault.Message);
        }
        catch (XmlException fault)
        {
            return Fault("PF7203", name, Invariant($"its XML breaks at line {fault.LineNumber}, column {fault.LinePosition}"));
        }
        catch (DecoderFallbackException)
        {
            return Fault("PF7203", name, "its XML is not UTF-8");
        }
        catch (Exception fault) when (fault is InvalidDataException or EndOfStreamException or NotSupportedException or IOException or ArgumentException
        or OverflowException)
        {
            return Fault("PF7201", name, "it is cut short, damaged or not a ZIP archive");
        }
    }

    /// <summary>An XML part, its declaration checked.</summary>
    internal static XmlReader Open(ZipArchiveEntry entry, long limit)
    {
        var stream = new GuardedStream(entry.Open(), limit, entry.Crc32);
        var text = new StreamReader(stream, new UTF8Encoding(false, throwOnInvalidBytes: true), detectEncodingFromByteOrderMarks: false);
        var xml = XmlReader.Create(new MarkupGuard(text), Settings);
        if (xml.Read() && xml.NodeType == XmlNodeType.XmlDeclaration)
        {
            if (xml.GetAttribute("encoding") is { } encoding && !encoding.Equals("utf-8", StringComparison.OrdinalIgnoreCase))
            {
                throw new ThreeMfFault("PF7203", Invariant($"part '{entry.FullName}' is declared in '{encoding}', where only UTF-8 is allowed"));
            }

            xml.Read();
        }

        return xml;
    }

    private static ThreeMfModel ReadPackage(ZipArchive archive)
    {
        var parts = new ThreeMfParts(archive);
        using var xml = Open(parts.Model, InputLimits.ModelBytes);
        var model = new ThreeMfModelReader(xml).Read();
        if (parts.Thumbnail is not { } picture)
        {
            return model;
        }

        using var stream = new GuardedStream(picture.Open(), LargestPicture, picture.Crc32);
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return model with { Thumbnail = copy.ToArray() };
    }

    private static Outcome<ThreeMfModel> Fault(string code, string name, string what) =>
        Outcome.Fault<ThreeMfModel>(Finding.Error(code, "", Invariant($"'{name}' cannot be read as 3MF: {what}."), "Write the file again.", FaultKind.Mesh));
}

/// <summary>A broken rule of the format; never leaves the reader.</summary>
internal sealed class ThreeMfFault(string code, string message) : Exception(message)
{
    public string Code { get; } = code;

    public ThreeMfFault()
        : this("PF7203", "")
    {
    }

    public ThreeMfFault(string message)
        : this("PF7203", message)
    {
    }

    public ThreeMfFault(string message, Exception innerException)
        : this("PF7203", $"{message} ({innerException.GetType().Name})")
    {
    }
}
