namespace PlatformForge.Exports.ThreeMf;

/// <summary>Names that the 3MF core specification 1.4.0 and the Open Packaging Conventions fix.</summary>
internal static class ThreeMfNames
{
    public const string CoreNamespace = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
    public const string RelationshipNamespace = "http://schemas.openxmlformats.org/package/2006/relationships";
    public const string ContentTypeNamespace = "http://schemas.openxmlformats.org/package/2006/content-types";
    public const string ModelRelationship = "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";
    public const string ThumbnailRelationship = "http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail";
    public const string ModelContentType = "application/vnd.ms-package.3dmanufacturing-3dmodel+xml";
    public const string RelationshipContentType = "application/vnd.openxmlformats-package.relationships+xml";
    public const string ContentTypesEntry = "[Content_Types].xml";
    public const string RelationshipsEntry = "_rels/.rels";
    public const string ModelEntry = "3D/3dmodel.model";
    public const string ThumbnailEntry = "Metadata/thumbnail.png";

    /// <summary>Metadata names that need no prefix (section 3.4.1).</summary>
    public static readonly string[] PlainMetadata =
        ["Title", "Designer", "Description", "Copyright", "LicenseTerms", "Rating", "CreationDate", "ModificationDate", "Application"];

    /// <summary>Units of a model (section 3.4) and their lengths in mm.</summary>
    public static readonly (string Name, double Mm)[] Units =
        [("micron", 0.001), ("millimeter", 1), ("centimeter", 10), ("inch", 25.4), ("foot", 304.8), ("meter", 1000)];

    /// <summary>Kinds of object (section 4).</summary>
    public static readonly string[] ObjectTypes = ["model", "solidsupport", "support", "surface", "other"];
}
