package org.measuredmile.recording.reader;

/// What one format makes of the elements of an XML file, as [XmlWalk] meets them. Names come without their prefix.
interface XmlContent {
    /// An element begins; `tag` holds only until this returns.
    void open(String element, XmlTag tag);

    /// An element ends; `parent` is the one it stands in, empty for the root; `text` is what stood in it, empty
    /// where other elements stood in it too, and holds only until this returns.
    void close(String element, String parent, XmlText text);

    /// Whether the text of the element that was just opened is asked for.
    boolean wantsText();

    /// Whether no more can be kept.
    boolean isFull();

    /// Blanks stand before the XML declaration, which the standard forbids.
    void beginsWithBlanks();

    /// The file ended inside an element.
    Decoding cutOff(long line, String what);

    /// The file is no XML from a place on; `line` 0 where the place is unknown.
    ///
    /// @param trusted false where the file declares a document type: nothing of it is kept then
    Decoding illFormed(long line, String why, boolean trusted);

    /// The file was read to its end, or until nothing more could be kept.
    Decoding finish();
}
